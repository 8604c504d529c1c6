using System.Globalization;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Kitchen.Words;

/// <summary>What was entered about a jar, in words.</summary>
public static class ObservationWords
{
    /// <summary>One line without its time: <c>pH 3.9 by meter, checked in buffer</c>, <c>looked at through the glass: all well</c>.</summary>
    public static string Of(Observation observation) => observation switch
    {
        PhMeasurement measurement => Measured(measurement),
        Titration titration => Titrated(titration),
        Look look => look.Opened ? "opened and looked at: all well" : "looked at through the glass: all well",
        Sighting sighting => $"seen: {Of(sighting.Kind)}",
        Taste taste => $"tasted: {Of(taste.Verdict)}",
        Handling handling => Of(handling.Kind),
        StageChange change => Of(change),
        PortionTaken portion => $"{AmountOf(portion)} taken out",
        JarOpened => "opened to eat from",
        _ => throw new ArgumentOutOfRangeException(nameof(observation), observation.GetType().Name, "Not a kind of observation."),
    };

    /// <summary>How a pH was measured.</summary>
    public static string Of(PhMethod method) => method switch
    {
        PhMethod.Meter => "meter",
        PhMethod.Probe => "probe",
        PhMethod.Strip => "strip",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a way to measure pH."),
    };

    /// <summary>What was seen.</summary>
    public static string Of(SightingKind kind) => kind switch
    {
        SightingKind.PiecesUp => "pieces above the brine",
        SightingKind.Film => "a flat white film",
        SightingKind.FuzzOrUnsure => "fuzz or colour, or cannot tell",
        SightingKind.BrineLow => "brine low",
        SightingKind.Gas => "pressure, or brine pushed out",
        SightingKind.OffSmell => "an off smell",
        SightingKind.Slime => "slime",
        SightingKind.Other => "something else",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of sighting."),
    };

    /// <summary>The same in a word or two, where many stand together.</summary>
    public static string InBrief(SightingKind kind) => kind switch
    {
        SightingKind.PiecesUp => "pieces up",
        SightingKind.Film => "film",
        SightingKind.FuzzOrUnsure => "fuzz",
        SightingKind.BrineLow => "low brine",
        SightingKind.OffSmell => "off smell",
        SightingKind.Slime => "slime",
        SightingKind.Gas => "pressure",
        _ => "what was seen",
    };

    /// <summary>What was done.</summary>
    public static string Of(HandlingKind kind) => kind switch
    {
        HandlingKind.PressedUnder => "pressed under",
        HandlingKind.Skimmed => "skimmed",
        HandlingKind.BrineToppedUp => "brine topped up with salt water",
        HandlingKind.GasLetOut => "gas let out, wiped and topped up",
        HandlingKind.LeftStanding => "left to go on",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of handling."),
    };

    /// <summary>What a taste said.</summary>
    public static string Of(TasteVerdict verdict) => verdict switch
    {
        TasteVerdict.NotYet => "not yet",
        TasteVerdict.Nearly => "nearly",
        TasteVerdict.Right => "right",
        TasteVerdict.PastIt => "past it",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict of a taste."),
    };

    /// <summary>Where a jar is in its life.</summary>
    public static string Of(JarStage stage) => stage switch
    {
        JarStage.Fermenting => "fermenting",
        JarStage.Cold => "in the cold",
        JarStage.Finished => "finished",
        JarStage.ThrownOut => "thrown out",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Not a stage of a jar."),
    };

    /// <summary>Where it went: <c>given away to Ash</c>, <c>into the freezer</c>; the stage where nobody said.</summary>
    public static string Of(StageChange change) => change.Went switch
    {
        Destination.Eaten => "eaten up",
        Destination.GivenAway => change.GivenTo is { } to ? $"given away to {to}" : "given away",
        Destination.Frozen => "into the freezer",
        Destination.Canned => "to tested canning",
        _ => Of(change.Stage),
    };

    private static string AmountOf(PortionTaken portion) => portion switch
    {
        { Litres: { } litres } => Metric(litres, "l", "ml"),
        { Kilograms: { } kilograms } => Metric(kilograms, "kg", "g"),
        { Fraction: { } fraction } => (fraction * 24) switch
        {
            > 2.9 and < 3.1 => "an eighth",
            > 5.9 and < 6.1 => "a quarter",
            > 7.9 and < 8.1 => "a third",
            > 11.9 and < 12.1 => "half",
            > 15.9 and < 16.1 => "two thirds",
            > 17.9 and < 18.1 => "three quarters",
            > 23.9 => "all of it",
            _ => string.Create(CultureInfo.InvariantCulture, $"{100 * fraction:0.#} %"),
        },
        _ => "some",
    };

    private static string Metric(double amount, string unit, string thousandth) => amount < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{1000 * amount:0} {thousandth}")
        : string.Create(CultureInfo.InvariantCulture, $"{amount:0.##} {unit}");

    /// <summary>The figure with the arithmetic behind it: 0.0901 is the milliequivalent weight of lactic acid.</summary>
    private static string Titrated(Titration titration)
    {
        string per = string.Create(CultureInfo.InvariantCulture, $"titrated: {titration.PercentLactic:0.00} % acid");
        return titration.BaseMillilitres is { } ml ? string.Create(CultureInfo.InvariantCulture,
            $"{per} ({ml:0.##} mL x {titration.BaseNormality:0.####} N x 0.0901 x 100 / {titration.SampleMillilitres:0.##} mL)") : per;
    }

    private static string Measured(PhMeasurement measurement)
    {
        var words = new List<string> { string.Create(CultureInfo.InvariantCulture, $"pH {measurement.Ph:0.0#} by {Of(measurement.Method)}") };
        if (measurement.Method == PhMethod.Strip)
            words.Add(measurement.PaleBrine ? "pale brine" : "dark brine");
        else
            words.Add(measurement.CheckedInBuffer ? "checked in buffer" : "not checked in buffer");
        if (measurement.Blended)
            words.Add("blended");
        if (measurement.SampleCelsius is { } celsius)
            words.Add(string.Create(CultureInfo.InvariantCulture, $"sample at {celsius:0.#} °C"));
        return string.Join(", ", words);
    }
}
