namespace FermentWatch.Kinetics.Temperature;

/// <summary>
/// The temperature around (or in) a jar from packing on, in steps of a quarter of an hour: first what was, then what may
/// be. Gaps are filled by the room's own cycle and level and widen the spread; they are never read as zero. After the last
/// step the last day repeats, with a spread that grows.
/// </summary>
public sealed class TemperatureCourse
{
    /// <summary>Length of a step, days.</summary>
    public const double StepDays = 1.0 / 96;

    /// <summary>Steps in a day.</summary>
    public const int StepsPerDay = 96;

    private readonly TemperatureStep[] _steps;
    private readonly TemperatureCourse? _later;

    private TemperatureCourse(TemperatureStep[] steps, IReadOnlyList<string> remarks)
        : this(steps, null, remarks)
    {
    }

    private TemperatureCourse(TemperatureStep[] steps, TemperatureCourse? later, IReadOnlyList<string> remarks)
    {
        _steps = steps;
        _later = later;
        Remarks = remarks;
    }

    /// <summary>Steps given; at least one.</summary>
    public int Count => _steps.Length + (_later?.Count ?? 0);

    /// <summary>What was filled or left out, in plain lines.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>The step that begins at this index after packing, filled; indexes past the end repeat the last day.</summary>
    public TemperatureStep this[int index] => index < _steps.Length ? _steps[index] : Beyond(index);

    /// <summary>One temperature for ever.</summary>
    /// <param name="celsius">-5 to 45 Celsius.</param>
    /// <param name="spreadCelsius">Standard deviation, 0 to 10 Celsius.</param>
    /// <param name="insideJar">Whether that is the temperature of the jar itself.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range, NaN included.</exception>
    public static TemperatureCourse Constant(double celsius, double spreadCelsius = TemperatureStep.RoomSensorSpreadCelsius, bool insideJar = false)
    {
        if (!TemperatureStep.IsInRange(celsius))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "-5 to 45 Celsius is taken");
        if (!(spreadCelsius >= 0 && spreadCelsius <= 10))
            throw new ArgumentOutOfRangeException(nameof(spreadCelsius), spreadCelsius, "0 to 10 Celsius is taken");
        return new([new TemperatureStep(celsius, spreadCelsius, insideJar)], []);
    }

    /// <summary>A place with no sensor.</summary>
    public static TemperatureCourse Typical(TypicalRoom room) => Constant(room.MeanCelsius, room.SpreadCelsius);

    /// <summary>
    /// From closed 15-minute means since packing, null where there is none. Means outside -5 to 45 Celsius are left out and
    /// said so; gaps are filled by the room's model.
    /// </summary>
    /// <param name="steps">The steps in order of time.</param>
    /// <param name="fallback">What stands where nothing at all was measured.</param>
    public static TemperatureCourse FromSteps(IReadOnlyList<TemperatureStep> steps, TypicalRoom fallback)
    {
        var remarks = new List<string>();
        return new(GapFilling.Fill(steps, fallback, remarks), remarks);
    }

    /// <summary>From readings at irregular times, in any order, as they stand in a file.</summary>
    public static TemperatureCourse FromReadings(IEnumerable<TimedTemperature> readings, TypicalRoom fallback, bool insideJar = false)
    {
        var remarks = new List<string>();
        TemperatureStep[] steps = QuarterHourMeans.Of(readings, insideJar, remarks);
        return new(GapFilling.Fill(steps, fallback, remarks), remarks);
    }

    /// <summary>This course until a day, and another from then on (a planned move); the other's step 0 stands at that day.</summary>
    public TemperatureCourse Then(double fromDay, TemperatureCourse later)
    {
        int from = Math.Clamp((int)Math.Round(fromDay * StepsPerDay), 0, 400 * StepsPerDay);
        var steps = new TemperatureStep[from];
        for (int i = 0; i < from; i++)
            steps[i] = this[i];
        return new(steps, later, [.. Remarks, .. later.Remarks]);
    }

    private TemperatureStep Beyond(int index)
    {
        if (_later is not null)
            return _later[index - _steps.Length];
        TemperatureStep last = _steps[^1];
        if (_steps.Length < StepsPerDay)
            return last;
        int back = StepsPerDay - ((index - _steps.Length) % StepsPerDay);
        TemperatureStep same = _steps[^back];
        double days = (index - _steps.Length + 1) * StepDays;
        return same with { SpreadCelsius = Math.Sqrt((same.SpreadCelsius * same.SpreadCelsius) + (2.0 * 2.0 * (1 - Math.Exp(-days / 5)))),
            InsideJar = last.InsideJar };
    }
}

/// <summary>A temperature measured at some time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="Celsius">Temperature, Celsius.</param>
public readonly record struct TimedTemperature(double Day, double Celsius);

/// <summary>A quarter of an hour of temperature.</summary>
/// <param name="Celsius">Mean, Celsius, -5 to 45; null where nothing that counts was measured.</param>
/// <param name="SpreadCelsius">Standard deviation of what the jar's surroundings may have had around that mean, Celsius.</param>
/// <param name="InsideJar">Measured inside the jar: no lag is applied.</param>
public readonly record struct TemperatureStep(double? Celsius, double SpreadCelsius, bool InsideJar)
{
    /// <summary>Lowest temperature the model takes; below, brine begins to freeze.</summary>
    public const double LowestCelsius = -5;

    /// <summary>Highest temperature the model takes; above, the lactic acid bacteria die.</summary>
    public const double HighestCelsius = 45;

    /// <summary>Spread of a sensor in the room of the jar: its own error and the difference from shelf to shelf.</summary>
    public const double RoomSensorSpreadCelsius = 0.5;

    /// <summary>Spread of a sensor in the jar: its own error.</summary>
    public const double JarSensorSpreadCelsius = 0.2;

    /// <summary>A mean measured in the room.</summary>
    public static TemperatureStep Room(double? celsius) => new(celsius, RoomSensorSpreadCelsius, InsideJar: false);

    /// <summary>A mean measured in the jar.</summary>
    public static TemperatureStep Jar(double? celsius) => new(celsius, JarSensorSpreadCelsius, InsideJar: true);

    /// <summary>Whether a temperature is one the model takes.</summary>
    public static bool IsInRange(double celsius) => celsius is >= LowestCelsius and <= HighestCelsius;
}
