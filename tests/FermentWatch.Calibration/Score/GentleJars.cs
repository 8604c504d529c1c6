using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Calibration.Score;

/// <summary>
/// Jars that no model of ours made: cabbage that falls from pH 5.6 to 4.6 in 1.3 to 2.8 days at 20 C, as published jars do, on a
/// logistic curve with a long tail, measured four times. Asked is each next reading, and the day of pH 4.6.
/// </summary>
internal static class GentleJars
{
    private const int Jars = 48;
    private const double RawPh = 5.95;
    private const double MeterError = 0.05;
    private const ulong Seed = 460;

    /// <summary>What was asked of the jars after so many readings.</summary>
    /// <param name="Asked">Jars asked for the next reading.</param>
    /// <param name="Inside">Jars whose next reading lay inside the middle 80 %.</param>
    /// <param name="Score">Mean quantile score, 0.1 pH.</param>
    /// <param name="Width">Mean width of the middle 80 %, pH.</param>
    /// <param name="Crossings">Jars that had not been measured below 4.6 yet.</param>
    /// <param name="TooEarly">Jars among them whose p90 of the acid line lay before the crossing.</param>
    public sealed record Result(int Asked, int Inside, double Score, double Width, int Crossings, int TooEarly);

    public static Result After(int readings, ModelParameters model)
    {
        var answers = new (Quantiles Ph, double Truth, bool Open, bool Early)[Jars];
        Parallel.For(0, Jars, jar => answers[jar] = Ask((uint)jar, readings, model));
        return new(Jars, answers.Count(each => each.Truth >= each.Ph.P10 && each.Truth <= each.Ph.P90),
            answers.Average(each => QuantileScore.Of(each.Ph, each.Truth)),
            answers.Average(each => each.Ph.P90 - each.Ph.P10), answers.Count(each => each.Open), answers.Count(each => each.Open && each.Early));
    }

    private static (Quantiles Ph, double Truth, bool Open, bool Early) Ask(uint jar, int readings, ModelParameters model)
    {
        double celsius = Draw(jar, 0, 12, 23);
        double slower = Math.Pow(2.6, (20 - celsius) / 10);
        double fall = slower * Draw(jar, 1, 1.3, 2.8);
        double line = slower * 2.6 * Math.Exp(0.25 * Philox.Normal(Seed, 1, jar, 2));
        double tail = slower * Draw(jar, 3, 5, 12);
        double end = Draw(jar, 4, 3.35, 3.6);
        double width = fall / 2.1;
        double Shelf(double day) => end + (0.55 * Math.Exp(-day / tail));
        double middle = line + (width * Math.Log((4.6 - Shelf(line)) / (Shelf(line) + RawPh - Shelf(0) - 4.6)));
        double Ph(double day) => Shelf(day) + ((RawPh - Shelf(0)) / (1 + Math.Exp((day - middle) / width)));
        double[] days = [line * Draw(jar, 5, 0.5, 0.9), line * Draw(jar, 6, 1, 1.4), line * Draw(jar, 7, 1.7, 2.4), line * Draw(jar, 8, 3, 5)];
        PhReading[] all = [.. days.Select((day, i) =>
            new PhReading(day, Math.Round(Ph(day) + (MeterError * Philox.Normal(Seed, 2, jar, (uint)i)), 2), PhMethod.Meter))];
        (Quantiles asked, PassageDays crossing) = CourseForecast.Ph(JarContents.Of(JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25), model),
            celsius, all[..readings], days[readings], model, jar);
        return (asked, all[readings].Ph, all[..readings].All(reading => reading.Ph > 4.6), crossing.P90 < line);
    }

    private static double Draw(uint jar, uint index, double low, double high) => low + ((high - low) * Philox.Uniform(Seed, 1, jar, index));
}
