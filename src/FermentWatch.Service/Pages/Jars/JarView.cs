using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Service.Pages.Jars;

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
    public JarView(Jar jar, JarForecast? saved, IReadOnlyList<Place> places, Household household, Instant now)
    {
        Jar = jar;
        Household = household;
        _saved = saved;
        Place = places.First(place => place.Id == jar.PlacementAt(now).PlaceId);
        Instant origin = saved?.Origin ?? QuarterHour.Floor(jar.PackedAt);
        Calendar = new ForecastCalendar(origin, saved?.Forecast.Course[^1].Day ?? 0, now, household.Zone);
        Measurements = [.. jar.Standing.OfType<PhMeasurement>()];
        Line = AcidLine.Report(Measurements, household.Zone);
        Trouble = Kitchen.Troubles.Trouble.Of(jar, household.Zone);
        TasteFrom = Tasting.From(jar, Forecast?.Target ?? default, origin, household.Zone, Line.State);
        Next = NextStep.Of(jar, Trouble, Line, Calendar, TasteFrom);
    }

    public Jar Jar { get; }

    public Household Household { get; }

    public Place Place { get; }

    public ForecastCalendar Calendar { get; }

    public IReadOnlyList<PhMeasurement> Measurements { get; }

    public AcidLineReport Line { get; }

    /// <summary>What trouble means for it at present.</summary>
    public TroubleState Trouble { get; }

    /// <summary>The first date worth tasting.</summary>
    public LocalDate TasteFrom { get; }

    public NextStep Next { get; }

    /// <summary>The latest forecast; null until the first was made, and while it is withdrawn after trouble.</summary>
    public Forecast? Forecast => Trouble.ForecastWithdrawn || !IsKept ? null : _saved?.Forecast;

    /// <summary>End of the last quarter hour the forecast knows.</summary>
    public Instant? ForecastAsOf => _saved?.AsOf;

    public SournessLevel Target => SournessLevel.Of(Jar.Target);

    /// <summary>Whether tasting is a question at all: it works, and no trouble keeps it back.</summary>
    public bool MayBeTasted => IsKept && Trouble is { ForecastWithdrawn: false, CloserWatch: false };

    public bool IsKept => Jar.Stage is JarStage.Fermenting or JarStage.Cold;

    /// <summary>The entry by which it ended; null while it is kept.</summary>
    public Guid? End => IsKept ? null : Jar.Standing.OfType<StageChange>().LastOrDefault()?.Id;

    /// <summary>When it is sour enough, in a few words; null without a forecast.</summary>
    public string? SourEnoughShort => Forecast?.Target is { } target ? ForecastWords.SourEnoughShort(target, Calendar) : null;

    /// <summary>When it is sour enough, in a sentence.</summary>
    public string SourEnough => Forecast?.Target is { } target
        ? ForecastWords.SourEnough(target, Calendar, Measurements.Count > 0 ? Measurements[^1] : null)
        : !IsKept ? PastWords.Of(Jar, Household.Zone)
        : Trouble is { ForecastWithdrawn: true, Last: { } seen } ? $"Nothing is forecast since {ObservationWords.Of(seen.Kind)} was seen, until a pH is measured."
        : "The forecast is being worked out. Look again in a minute.";

    /// <summary>The state against the acid line, in two words.</summary>
    public string LineState => Line.State switch
    {
        AcidLineState.MeasuredBelow => Line.Settled ? "measured below, settled" : "measured below",
        AcidLineState.MeasuredAbove => "measured above",
        _ => "not measured",
    };

    /// <summary>What the line says and covers.</summary>
    public string LineSentence => AcidLineWords.Sentence(Line, Household.Zone);

    /// <summary>The same where the state stands beside it already.</summary>
    public string LineCovers => Line.State == AcidLineState.NotMeasured ? AcidLineWords.TestedRecipe : LineSentence;

    /// <summary>When the line is expected, late end first; null where it was measured below or nothing is expected yet.</summary>
    public string? LineExpected => Forecast is { } forecast && Line.State != AcidLineState.MeasuredBelow
        ? ForecastWords.AcidLine(forecast.AcidLine, Calendar, Line.State, Measurements.Count > 0)
        : null;

    /// <summary>The same for the middle of the largest piece, where it is later by a day or more.</summary>
    public string? LineExpectedInPieces =>
        Forecast is { } forecast && Line.State != AcidLineState.MeasuredBelow && LagsByADay(forecast.AcidLine.P90, forecast.CentreAcidLine.P90)
            ? ForecastWords.AcidLineInPieces(forecast.CentreAcidLine, Calendar)
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

    private static bool LagsByADay(double? brine, double? centre) => brine is { } first && (centre is not { } last || last - first >= 1);
}
