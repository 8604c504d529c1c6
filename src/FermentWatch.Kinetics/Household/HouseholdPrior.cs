namespace FermentWatch.Kinetics.Household;

/// <summary>
/// What a household's finished jars say of its next one: partial pooling. A jar's rate is the kitchen's own and the jar's own
/// part; the kitchen's part is learned and shrunk to the published prior while jars are few. Normal throughout, so the pooling is
/// exact for the lessons given. It moves tasting days, never a line.
/// </summary>
/// <param name="LnRateMean">ln of the rate factor of the next jar, mean.</param>
/// <param name="LnRateDeviation">Its standard deviation.</param>
/// <param name="LnTasteMean">ln of the household's level over the one it chose, mean.</param>
/// <param name="LnTasteDeviation">Its standard deviation.</param>
public sealed record HouseholdPrior(double LnRateMean, double LnRateDeviation, double LnTasteMean, double LnTasteDeviation)
{
    /// <summary>Spread of the rate from kitchen to kitchen, ln.</summary>
    internal const double KitchenRate = 0.15;

    /// <summary>Spread of the rate from jar to jar in one kitchen, ln; with the kitchen's it makes up the published prior's 0.20.</summary>
    internal const double JarRate = 0.1323;

    /// <summary>Spread of the liked level from household to household around the words they chose, ln.</summary>
    internal const double HouseholdTaste = 0.35;

    /// <summary>Spread of the liked level from jar to jar in one household, ln.</summary>
    internal const double JarTaste = 0.1;

    /// <summary>Spread of the liked level of any jar of any household, ln: what a member's deviate is measured in.</summary>
    internal static double TotalTaste { get; } = Math.Sqrt((HouseholdTaste * HouseholdTaste) + (JarTaste * JarTaste));

    /// <summary>A household of which nothing is known.</summary>
    public static HouseholdPrior Unknown { get; } = From([]);

    /// <summary>Pools the lessons of finished jars; their order does not matter.</summary>
    public static HouseholdPrior From(IEnumerable<JarLesson> lessons)
    {
        // Sorted, because a sum of doubles depends on its order.
        JarLesson[] sorted = [.. lessons.OrderBy(lesson => lesson.LnRateMean).ThenBy(lesson => lesson.LnTasteMean)];
        (double rate, double rateDeviation) = Pool(sorted.Select(lesson => (lesson.LnRateMean, lesson.LnRateDeviation)), KitchenRate, JarRate);
        (double taste, double tasteDeviation) = Pool(sorted.Select(lesson => (lesson.LnTasteMean, lesson.LnTasteDeviation)), HouseholdTaste,
            JarTaste);
        return new(rate, rateDeviation, taste, tasteDeviation);
    }

    /// <summary>Prior of the next jar: mean and standard deviation.</summary>
    private static (double Mean, double Deviation) Pool(IEnumerable<(double Mean, double Deviation)> jars, double between, double within)
    {
        double jarPrior = 1 / ((between * between) + (within * within));
        double precision = 1 / (between * between);
        double weighted = 0;
        foreach ((double mean, double deviation) in jars)
        {
            // What the jar itself said is its posterior less the prior it was given.
            double told = (1 / (deviation * deviation)) - jarPrior;
            if (!(told > 1e-3 * jarPrior))
                continue;
            double toldMean = mean / (deviation * deviation) / told;
            double weight = 1 / ((1 / told) + (within * within));
            precision += weight;
            weighted += weight * toldMean;
        }
        return (weighted / precision, Math.Sqrt((1 / precision) + (within * within)));
    }
}

/// <summary>What a finished jar taught, under the published prior: how fast its flora was and how sour the household likes it.</summary>
/// <param name="LnRateMean">ln of the rate factor, mean.</param>
/// <param name="LnRateDeviation">Its standard deviation.</param>
/// <param name="LnTasteMean">ln of the household's level over the one it chose, mean.</param>
/// <param name="LnTasteDeviation">Its standard deviation.</param>
public sealed record JarLesson(double LnRateMean, double LnRateDeviation, double LnTasteMean, double LnTasteDeviation);
