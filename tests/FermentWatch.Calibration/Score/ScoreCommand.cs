using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration.Score;

/// <summary>A row forecast without its study, by the model and by the rule.</summary>
internal sealed record ScoredRow(PublishedCourse Row, Quantiles Model, Quantiles Rule)
{
    public double ModelScore => QuantileScore.Of(Model, Row.Middle);

    public double RuleScore => QuantileScore.Of(Rule, Row.Middle);

    /// <summary>Width of the model's middle 80 %, in 0.1.</summary>
    public double Width => (Model.P90 - Model.P10) / 0.1;

    /// <summary>Whether the middle 80 % meets the published range.</summary>
    public bool IsCovered => Model.P90 >= Row.Low && Model.P10 <= Row.High;
}

/// <summary>Scores the forecasts on studies left out one by one and prints the tables for FIGURES.md.</summary>
internal sealed class ScoreCommand
{
    private readonly Dictionary<string, ModelParameters> _models = [];
    private readonly List<ScoredRow> _rows = [];
    private double _q10;

    /// <param name="rows">Whether the published rows are scored.</param>
    /// <param name="jars">Whether the gentle jars are.</param>
    public static void Run(bool rows, bool jars)
    {
        double[] whole = new LeastSquares(PublishedCourses.All).Fit(new double[FreeParameters.All.Count]);
        if (jars)
            Gentle(FreeParameters.ModelAt(whole));
        if (rows)
            Published(whole);
    }

    private static void Published(double[] whole)
    {
        var command = new ScoreCommand();
        command.Fit(whole);
        command.Rows();
        command.Table("study", row => row.Row.Study);
        command.Table("vegetable", row => row.Row.Vegetable);
        command.Table("temperature", row =>
            row.Row.Celsius switch { < 8 => "below 8 C", < 16 => "8 to 16 C", < 24 => "16 to 24 C", _ => "24 C and above" });
        command.Sequences();
        command.Crossings();
    }

    private void Fit(double[] whole)
    {
        string[] studies = [.. PublishedCourses.Scored.Select(row => row.Study).Distinct()];
        var models = new ModelParameters[studies.Length];
        var rules = new SingleLogistic[studies.Length];
        Parallel.For(0, studies.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i =>
        {
            models[i] = FreeParameters.ModelAt(new LeastSquares([.. PublishedCourses.All.Where(row => row.Study != studies[i])]).Fit(whole));
            rules[i] = SingleLogistic.Fit([.. PublishedCourses.Scored.Where(row => row.Study != studies[i])]);
        });
        for (int i = 0; i < studies.Length; i++)
            _models[studies[i]] = models[i];
        _q10 = rules.Average(rule => rule.Q10);
        foreach (PublishedCourse row in PublishedCourses.Scored)
            _rows.Add(new(row, CourseForecast.Of(row, [], _models[row.Study]), rules[Array.IndexOf(studies, row.Study)].Of(row)));
    }

    private void Rows()
    {
        foreach (ScoredRow each in _rows)
            Console.WriteLine($"{each.Row.Id,-12} {each.Row.Vegetable,-12} {each.Row.Celsius,4:0.#} C day {each.Row.Day,5:0.#} "
                + $"{each.Row.Quantity,-22} {each.Row.Low:0.00} to {each.Row.High:0.00}: {Show(each.Model)} "
                + $"{(each.IsCovered ? "inside " : "OUTSIDE")} score {each.ModelScore:0.00}; rule {Show(each.Rule)} score {each.RuleScore:0.00}");
    }

    private void Table(string by, Func<ScoredRow, string> of)
    {
        Console.WriteLine();
        Console.WriteLine($"| {by} | values | score | rule's (Q10 {_q10:0.0}) | inside the middle 80 % | width, 0.1 pH or 0.1 % |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (IGrouping<string, ScoredRow> group in _rows.GroupBy(of))
            Console.WriteLine($"| {group.Key} | {group.Count()} | {group.Average(row => row.ModelScore):0.00} | "
                + $"{group.Average(row => row.RuleScore):0.00} | {group.Count(row => row.IsCovered)} of {group.Count()} | "
                + $"{group.Average(row => row.Width):0.0} |");
        double model = _rows.GroupBy(of).Average(group => group.Average(row => row.ModelScore));
        double rule = _rows.GroupBy(of).Average(group => group.Average(row => row.RuleScore));
        Console.WriteLine($"| mean of these | {_rows.Count} | {model:0.00}, {model / rule:0.00} of the rule's | {rule:0.00} | "
            + $"{_rows.Count(row => row.IsCovered)} of {_rows.Count} | {_rows.Average(row => row.Width):0.0} |");
    }

    private void Sequences()
    {
        Console.WriteLine();
        Console.WriteLine("| asked of the same jar | after | answer | published | |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        var scored = new List<ScoredRow>();
        foreach (IGrouping<(string, double, string),
            PublishedCourse> jar in PublishedCourses.Scored.GroupBy(row => (row.Study, row.Celsius, row.Vegetable)))
        {
            PublishedCourse[] rows = [.. jar.OrderBy(row => row.Day).ThenByDescending(row => row.Quantity, StringComparer.Ordinal)];
            for (int i = 1; i < rows.Length; i++)
            {
                var answer = new ScoredRow(rows[i], CourseForecast.Of(rows[i], rows[..i], _models[rows[i].Study]), default);
                Console.WriteLine($"| {rows[i].Id} | {string.Join(", ", rows[..i].Select(row => row.Id))} | {Show(answer.Model)} | "
                    + $"{rows[i].Low:0.00} to {rows[i].High:0.00} | {(answer.IsCovered ? "inside" : "outside")} |");
                scored.Add(answer);
            }
        }
        Console.WriteLine($"| {scored.Count} | | score {scored.Average(row => row.ModelScore):0.00}, width {scored.Average(row => row.Width):0.0} | "
            + $"| {scored.Count(row => row.IsCovered)} of {scored.Count} |");
    }

    private void Crossings()
    {
        PublishedCourse[] rows = [.. PublishedCourses.Scored.Where(row => row.Quantity == "ph")];
        Console.WriteLine();
        foreach (PublishedCourse row in rows)
        {
            PassageDays day = CourseForecast.DayOf(row, _models[row.Study]);
            Console.WriteLine($"pH {row.Middle:0.00} of {row.Id}: published on day {row.Day:0.0}, expected {day.P10:0.0}, {day.P50:0.0}, "
                + $"{day.P90:0.0}{(day.P90 < row.Day ? ": TOO EARLY" : "")}");
        }
        Console.WriteLine($"p90 before the published day: {rows.Count(row => CourseForecast.DayOf(row, _models[row.Study]).P90 < row.Day)} of "
            + $"{rows.Length}");
    }

    private static void Gentle(ModelParameters model)
    {
        Console.WriteLine();
        foreach (Fall fall in Fall.All)
            Console.WriteLine($"pH {fall.FromPh:0.0} to {fall.ToPh:0.0}, {fall.Vegetable} at {fall.Celsius:0} C: {fall.Days([model])[0]:0.00} days");
        Console.WriteLine($"napa at 5 C, 3.5 against 1.5 % salt: {SaltInTheCold.Ratios([model])[0]:0.00} times as long");
        Console.WriteLine($"room of heads {model.Rooms[0]:0.00}e9, of leaves {model.Rooms[1]:0.00}e9, of roots {model.Rooms[2]:0.00}e9, starters' "
            + $"upkeep {model.Guilds[0].MaintenanceHexosePerHour:0.0000} and growth {model.Guilds[0].GrowthHexose:0.0000}, finishers' "
            + $"{model.Guilds[2].MaintenanceHexosePerHour:0.0000} and {model.Guilds[2].GrowthHexose:0.0000} mol per 1e9");
        Console.WriteLine();
        Console.WriteLine("| gentle jars, after | next reading inside | score, 0.1 pH | width, pH | acid line's p90 before the crossing |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        for (int readings = 0; readings <= 3; readings++)
        {
            GentleJars.Result result = GentleJars.After(readings, model);
            Console.WriteLine($"| {readings} readings | {result.Inside} of {result.Asked} | {result.Score:0.00} | {result.Width:0.00} | "
                + $"{result.TooEarly} of {result.Crossings} |");
        }
    }

    private static string Show(Quantiles quantiles) => $"{quantiles.P10:0.00} / {quantiles.P50:0.00} / {quantiles.P90:0.00}";
}
