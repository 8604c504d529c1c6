using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Reads a call of <c>outlook</c> and gathers everything that is wrong with it.</summary>
internal static class CallReader
{
    private const double LongestDays = 366;

    /// <summary>Reads a call. It means nothing where there are refusals.</summary>
    /// <param name="input">What was typed.</param>
    /// <param name="now">The present: a jar cannot have been packed later.</param>
    public static (OutlookCall Call, IReadOnlyList<Refusal> Refusals) Read(OutlookInput input, Instant now)
    {
        var reader = new FieldReader();
        JarRecipe recipe = RecipeReader.Read(input, reader);
        double days = ReadDays("days", input.Days, 30, reader);
        var request = new ForecastRequest
        {
            Recipe = recipe,
            Temperatures = TemperatureReader.Read(input, days, now, reader),
            Readings = [.. input.Readings.Select(typed => ReadingReader.Read(typed, reader)).OfType<Kinetics.Observation.PhReading>()],
            Titrations = [.. input.Titrations.Select(typed =>
                ReadingReader.ReadTitration(typed, reader)).OfType<Kinetics.Observation.AcidityReading>()],
            Days = days,
            EveryDays = ReadDays("every", input.Every, 1, reader),
            Members = reader.ReadWhole("members", input.Members, 256, 16, 65536),
            Seed = (ulong)reader.ReadWhole("seed", input.Seed, 1, 0, int.MaxValue),
        };
        NamedTarget[] until = [.. input.Until.Select(typed => ReadTarget(typed, reader)).OfType<NamedTarget>()];
        NamedTarget? target = input.Target is null ? null : ReadTarget(input.Target, reader);
        LocalDate? ready = ReadReady(input, reader);
        AddOwnRules(request, reader);
        return (new OutlookCall(request, until, target, ready), reader.Refusals);
    }

    private static LocalDate? ReadReady(OutlookInput input, FieldReader reader)
    {
        if (input.Ready is null)
            return null;
        if (input.Target is null)
            reader.Refuse("ready", input.Ready, "say by --target how sour it should be then");
        if (LocalDatePattern.Iso.Parse(input.Ready.Trim()) is { Success: true, Value: var date })
            return date;
        reader.Refuse("ready", input.Ready, "a date such as 2026-12-24 would be right");
        return null;
    }

    private static double ReadDays(string field, string? typed, double ifEmpty, FieldReader reader) => typed is null ? ifEmpty
        : reader.Read(field, typed, Amount.Days, "d", TemperatureCourse.StepDays, LongestDays, "a quarter of an hour (0.0104) to 366 days");

    private static NamedTarget? ReadTarget(string typed, FieldReader reader)
    {
        if (NamedTarget.TryRead(typed, out NamedTarget? target, out Refusal? refusal))
            return target;
        reader.Refusals.Add(refusal);
        return null;
    }

    /// <summary>The request's own rules repeat some of the reader's; what was said already is not said twice.</summary>
    private static void AddOwnRules(ForecastRequest request, FieldReader reader)
    {
        var said = reader.Refusals.Select(refusal => refusal.Field).ToHashSet();
        // Where a vegetable was refused its share is missing, which is no trouble of its own.
        if (said.Contains("produce"))
            said.UnionWith(["vegetables", "other ingredients"]);
        reader.Refusals.AddRange(request.Check().Where(refusal => !said.Contains(refusal.Field)));
    }
}
