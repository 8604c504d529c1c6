using System.Globalization;
using FermentWatch.Benchmarks;
using FermentWatch.Benchmarks.Archives;
using FermentWatch.Benchmarks.Crowd;
using FermentWatch.Benchmarks.History;
using FermentWatch.Benchmarks.Intake;

// Performance as ratios measured in one run, with the exactness beside them.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case ["forecast"]:
        ForecastBenchmark.Run();
        return 0;
    case ["intake"]:
        await IntakeBenchmark.RunAsync();
        return 0;
    case ["intake", "memory"]:
        await IntakeMemory.RunAsync(5_000_000);
        return 0;
    case ["morning"]:
        await MorningBenchmark.RunAsync();
        return 0;
    case ["history-judging"]:
        await HistoryJudgingBenchmark.RunAsync();
        return 0;
    case ["history"]:
        await HistoryBenchmark.RunAsync(sensors: 20, days: 1096);
        return 0;
    case ["history", string sensors, string days] when int.TryParse(sensors, out int howMany) && int.TryParse(days, out int howLong):
        await HistoryBenchmark.RunAsync(howMany, howLong);
        return 0;
    case ["old-readings"]:
        await OldReadingsBenchmark.RunAsync(1_000_000);
        return 0;
    case ["old-readings", string count] when int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out int many):
        await OldReadingsBenchmark.RunAsync(many);
        return 0;
    case ["archive"]:
        await ArchiveBenchmark.RunAsync(sensors: 1, days: 366);
        return 0;
    case ["archive", string sensors, string days] when int.TryParse(sensors, out int howMany) && int.TryParse(days, out int howLong):
        await ArchiveBenchmark.RunAsync(howMany, howLong);
        return 0;
    case ["quarter"]:
        await QuarterBenchmark.RunAsync();
        return 0;
    case ["crowd"]:
        await CrowdBenchmark.RunAsync(TimeSpan.FromMinutes(1));
        return 0;
    case ["household"]:
        await HouseholdBenchmark.RunAsync(TimeSpan.FromMinutes(31));
        return 0;
    case ["household", string minutes] when int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out int span):
        await HouseholdBenchmark.RunAsync(TimeSpan.FromMinutes(span));
        return 0;
    case ["room", string file] when File.Exists(file):
        RoomBenchmark.Run(file);
        return 0;
    default:
        Console.Error.WriteLine("benchmarks: 'forecast', 'room FILE' (a CSV of timestamp,fahrenheit), 'intake', 'intake memory', 'morning', "
            + "'history-judging', 'history', 'history SENSORS DAYS', 'old-readings', 'old-readings COUNT', 'archive', "
            + "'archive SENSORS DAYS', 'quarter', 'household', 'household MINUTES' or 'crowd' would be right");
        return 2;
}
