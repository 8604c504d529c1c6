using System.CommandLine;
using System.Globalization;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.OldReadings;

/// <summary><c>import readings</c>: years of readings out of a CSV file.</summary>
internal static class ImportReadingsVerb
{
    private const int MostLinesTold = 20;

    public static Command Create(CommandContext context)
    {
        var from = new Argument<string>("FILE.csv") { Description = "A header line, then a reading a line." };
        var verb = new Command("readings", "Takes readings of earlier years into the log of a sensor. Bad lines are told by their number, and "
            + "nothing is taken where there are any. The same file again adds nothing. The service judges them as it judges any others.") { from };
        var options = new MapOptions(verb);
        var skip = new Option<bool>("--skip-bad") { Description = "Leaves bad lines out and says how many there were." };
        verb.Add(skip);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            var act = provider.GetRequiredService<TakeOldReadings>();
            (ReadingMap? map, List<Refusal> refusals) = options.Read(call, act);
            (Sensor? sensor, Refusal? unknown) = await act.FindAsync(options.Sensor(call), cancellationToken);
            if (unknown is not null)
                refusals.Add(unknown);
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            await using var file = new FileStream(call.GetValue(from)!, FileMode.Open, FileAccess.Read, FileShare.Read);
            var csv = new ReadingCsv(file, map!);
            if (csv.WrongHeader() is { } wrong)
                return context.Fail($"{file.Name}, {wrong}");
            return await new OldReadingsRun(act, sensor!, map!, csv, context).RunAsync(call.GetValue(skip), cancellationToken);
        });
        return verb;
    }

    /// <summary>One file: looked through first, so that a bad line in it means that nothing of it is taken.</summary>
    private sealed class OldReadingsRun(TakeOldReadings act, Sensor sensor, ReadingMap map, ReadingCsv csv, CommandContext context)
    {
        private readonly List<string> _told = [];
        private long _bad;

        public async Task<int> RunAsync(bool skipBad, CancellationToken cancellationToken)
        {
            if (!skipBad)
            {
                await Consoles.WithProgressAsync("looking through", context, progress => Task.Run(() =>
                {
                    foreach (var _ in csv.Read(Note, progress))
                        cancellationToken.ThrowIfCancellationRequested();
                    return true;
                }, cancellationToken));
                if (_bad > 0)
                    return TellBad("Nothing was taken. Mend these lines, or leave them out with --skip-bad.", ExitCode.Failed);
            }
            TakenReadings taken = await Consoles.WithProgressAsync("taking in", context,
                progress => Task.Run(() => act.DoAsync(sensor, map.Unit.Quantity, csv.Read(Note, progress), cancellationToken), cancellationToken));
            Tell(taken);
            return _bad > 0 ? TellBad("These lines were left out.", ExitCode.Done) : ExitCode.Done;
        }

        private void Note(long line, string wrong)
        {
            if (_bad++ < MostLinesTold)
                _told.Add(string.Create(CultureInfo.InvariantCulture, $"line {line}: {wrong}"));
        }

        private int TellBad(string then, int exitCode)
        {
            foreach (string line in _told)
                context.Error.WriteLine(line);
            if (_bad > _told.Count)
                context.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {_bad - _told.Count} more"));
            context.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{_bad} bad {(_bad == 1 ? "line" : "lines")}. {then}"));
            return exitCode;
        }

        private void Tell(TakenReadings taken) => context.Output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{taken.Stored} readings of {sensor.Slug} were taken, {taken.Duplicates} were there already, {taken.Conflicts} left out for another "
            + $"value at their time. They are judged while the service runs."));
    }
}
