using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Acts.Jars;

/// <summary>Everything the pages and the API say of one jar, worked out from its records and its latest forecast.</summary>
public sealed class JarView
{
    private readonly JarForecast? _saved;

    /// <summary>Works out what is said.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="saved">Its latest forecast; null until the first was made.</param>
    /// <param name="places">Every place.</param>
    /// <param name="household">For its zone and units.</param>
    /// <param name="now">The present.</param>
    /// <param name="today">What it needs today, as the round has it.</param>
    public JarView(Jar jar, JarForecast? saved, IReadOnlyList<Place> places, Household household, Instant now, RoundJar today)
    {
        Jar = jar;
        Household = household;
        _saved = saved;
        Places = places;
        Place = places.First(place => place.Id == jar.PlacementAt(now).PlaceId);
        Instant origin = saved?.Origin ?? QuarterHour.Floor(jar.PackedAt);
        Calendar = new ForecastCalendar(origin, saved?.Forecast.Course[^1].Day ?? 0, now, household.Zone);
        Measurements = [.. jar.Standing.OfType<PhMeasurement>()];
        Today = today;
        TasteFrom = today.Taste?.From ?? Tasting.From(jar, Told, household.Zone, Line.State);
    }

    public Jar Jar { get; }

    public Household Household { get; }

    public Place Place { get; }

    /// <summary>Every place of the household, in shelf order.</summary>
    public IReadOnlyList<Place> Places { get; }

    public ForecastCalendar Calendar { get; }

    public IReadOnlyList<PhMeasurement> Measurements { get; }

    private PhMeasurement? LastMeasured => Measurements.Count > 0 ? Measurements[^1] : null;

    /// <summary>What it needs today: the same that the round, its messages and the calendar say.</summary>
    public RoundJar Today { get; }

    public AcidLineReport Line => Today.Line;

    /// <summary>What trouble means for it at present.</summary>
    public TroubleState Trouble => Today.State;

    /// <summary>The first date worth tasting.</summary>
    public LocalDate TasteFrom { get; }

    public NextStep Next => Today.Step;

    /// <summary>The latest forecast; null until the first was made, while it is withdrawn after trouble, and once the jar has ended.</summary>
    public Forecast? Forecast => Trouble.ForecastWithdrawn || !IsKept ? null : _saved?.Forecast;

    private JarForecast? Told => Forecast is null ? null : _saved;

    /// <summary>The date before which tasting is not offered.</summary>
    public LocalDate NotTastedBefore => Tasting.NotBefore(Jar, Told, Household.Zone, Line.State);

    /// <summary>What is said of it as long as it is so; nothing once it has ended.</summary>
    public IReadOnlyList<string> Warnings => IsKept ? [.. JarWarnings.Of(Jar, Forecast, Calendar)] : [];

    /// <summary>How warm it is expected to be in the jar now; the place's own word where nothing is forecast.</summary>
    public double CelsiusNow => Told?.PointAt(Calendar.Now).JarCelsius ?? Place.Typical.Room().MeanCelsius;

    /// <summary>What is expected of its titratable acidity now, per cent lactic; null where nothing is forecast.</summary>
    public double? AcidityNowPercentLactic => Told?.PointAt(Calendar.Now).AcidityPercentLactic.P50;

    /// <summary>Why the spread is wider than the model's own; null where it is not.</summary>
    public string? WhyWider => Forecast is not null && Remedies.Widening(Jar) is { } done
        ? $"The spread is {WiderSpread.Factor:0.0#} times as wide: {ObservationWords.Of(done.Kind)} on "
            + $"{done.At.InZone(Household.Zone).Date.ToString("d MMMM", System.Globalization.CultureInfo.InvariantCulture)}, and no pH measured "
            + "since."
        : null;

    /// <summary>What stands beside a decision about a jar that was not measured below the line; null where it was.</summary>
    public string? LineRuleWhereDecided => LineRule.WhereDecided(Line.State, Household.PhTool);


    /// <summary>End of the last quarter hour the forecast knows.</summary>
    public Instant? ForecastAsOf => _saved?.AsOf;

    public SournessLevel Target => SournessLevel.Of(Jar.Target);

    /// <summary>Whether its brine may start another jar.</summary>
    public bool MayStartAnother => StarterSource.Of(Jar, _saved, Household.Zone, Calendar.Now) is not null;

    /// <summary>Whether tasting is a question at all: its day has come, and no trouble keeps it back.</summary>
    public bool MayBeTasted => IsKept && Trouble is { ForecastWithdrawn: false, CloserWatch: false } && Calendar.Today >= NotTastedBefore;

    /// <summary>When to taste, in words; null where that is no question.</summary>
    public string? TastingWords => Today.Taste is not { From: { } from } ask || Jar.Stage != JarStage.Fermenting ? null
        : ask.By != Jar.Number ? $"Jar {ask.By} is tasted for it: one stands for jars alike."
        : ask.IsPast(Calendar.Today) ? "Past its tasting days, as expected." : Tasting.Words(from, Calendar.Today);

    public bool IsKept => Jar.Stage is JarStage.Fermenting or JarStage.Cold;

    /// <summary>Where it is in its life, in words: <c>in the cold</c>, <c>in the freezer</c>.</summary>
    public string StageWords => Jar.IsFrozen ? "in the freezer" : ObservationWords.Of(Jar.Stage);

    /// <summary>The entry by which it ended; null while it is kept.</summary>
    public Guid? End => IsKept ? null : Jar.Standing.OfType<StageChange>().LastOrDefault()?.Id;

    /// <summary>When it is sour enough, in a few words; null without a forecast.</summary>
    public string? SourEnoughShort => Forecast?.Target is { } target ? ForecastWords.SourEnoughShort(target, Calendar) : null;

    /// <summary>What an entry of it wrote down and changed; null where it has none of that id that stands.</summary>
    public string? Said(Guid? entry) => Jar.Standing.FirstOrDefault(each => each.Id == entry) is { } said
        ? EntryWords.Of(Jar, said, Household.Zone, Today.Taste, Calendar.Today) : null;

    /// <summary>When it is sour enough, in a sentence.</summary>
    public string SourEnough => IsKept && !Trouble.ForecastWithdrawn
        && Jar.Standing.OfType<Taste>().LastOrDefault() is { Verdict: TasteVerdict.Right or TasteVerdict.PastIt } taste
        ? ForecastWords.Tasted(taste, Calendar, LastMeasured)
        : Forecast?.Target is { } target
        ? ForecastWords.SourEnough(target, Calendar, LastMeasured)
        : !IsKept ? PastWords.Of(Jar, Household.Zone)
        : NoForecast.Of(Jar) is { } why ? why
        : Trouble.Rising ? "Nothing is forecast while the pH rises, until one is measured that does not."
        : Trouble is { ForecastWithdrawn: true, Handled: { } done }
            ? $"{Capital(ObservationWords.Of(done.Kind))}. The forecast comes back, wider, after {Days(Trouble.WellDaysToGo)}, or when a pH is "
                + "measured."
        : Trouble is { ForecastWithdrawn: true, Last: { } small, Remedy: not null }
            ? $"Nothing is forecast since {ObservationWords.Of(small.Kind)} was seen, until it is settled or a pH is measured."
        : Trouble is { ForecastWithdrawn: true, Last: { } seen }
            ? $"Nothing is forecast since {ObservationWords.Of(seen.Kind)} was seen, until a pH is measured."
        : "The forecast is being worked out. Look again in a minute.";

    /// <summary>The state against the acid line, in two words.</summary>
    public string LineState => Line.State switch
    {
        AcidLineState.MeasuredBelow =>
            Line.Alarm != AcidLineAlarm.None ? "measured below, and rising" : Line.Settled ? "measured below, settled" : "measured below",
        AcidLineState.MeasuredAbove => "measured above",
        _ => "not measured",
    };

    /// <summary>What the line says and covers.</summary>
    public string LineSentence => AcidLineWords.Sentence(Jar, Line, Household.Zone);

    /// <summary>The same where the state stands beside it already.</summary>
    public string LineCovers => Line.State == AcidLineState.NotMeasured ? AcidLineWords.NotMeasured(Jar) : LineSentence;

    /// <summary>When the line is expected, late end first; null where it was measured below or nothing is expected yet.</summary>
    public string? LineExpected => Forecast is { } forecast && Line.State != AcidLineState.MeasuredBelow
        ? ForecastWords.AcidLine(forecast.AcidLine, Calendar, Line.State, Measurements.Count > 0)
        : null;

    /// <summary>The same for the middle of the largest piece, where it is later by a day or more.</summary>
    public string? LineExpectedInPieces =>
        Forecast is { } forecast && Line.State != AcidLineState.MeasuredBelow && LagsByADay(forecast.AcidLine.P90, forecast.CentreAcidLine.P90)
            ? ForecastWords.AcidLineInPieces(forecast.CentreAcidLine, Calendar, Measurements.Count > 0)
            : null;

    /// <summary>How far it is; null without a forecast.</summary>
    public JarProgress? Progress => Forecast is { } forecast
        ? JarProgress.At(forecast.Course, NowDay, Target.AcidityPercentLactic)
        : null;

    /// <summary>Days since packing, with the fraction.</summary>
    public double NowDay => (Calendar.Now - Calendar.Origin).TotalDays;

    /// <summary>Mean temperature of its first week, as it was and may be, Celsius.</summary>
    public double FirstWeekCelsius
    {
        get
        {
            double[] week = [.. (Forecast?.Course ?? []).Where(point => point.Day <= DayByDay.Days).Select(point => point.JarCelsius)];
            return week.Length > 0 ? week.Average() : Place.Typical.Room().MeanCelsius;
        }
    }

    private static string Days(int days) => days == 1 ? "one more day on which all is well" : $"{days} more days on which all is well";

    private static bool LagsByADay(double? brine, double? centre) => brine is { } first && (centre is not { } last || last - first >= 1);
}
