using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Troubles;

/// <summary>What a sighting does to a jar's forecast and to how closely it is watched. This project's own rules.</summary>
public static class Trouble
{
    /// <summary>Days on which all was well after which the closer watch ends, whatever was done.</summary>
    private const int WellDaysThatEndTheWatch = 3;

    /// <summary>Later days on which all must be well after small trouble was seen to, before it is settled.</summary>
    public const int WellDaysThatSettle = 2;

    /// <summary>Gas is what a working jar makes; everything else is trouble.</summary>
    public static bool IsTrouble(SightingKind kind) => kind != SightingKind.Gas;

    /// <summary>Whether the forecast is withdrawn: the acid may have been eaten or was never made evenly.</summary>
    public static bool WithdrawsForecast(SightingKind kind) => kind is SightingKind.PiecesUp or SightingKind.Film
        or SightingKind.FuzzOrUnsure or SightingKind.BrineLow or SightingKind.Slime or SightingKind.OffSmell;

    /// <summary>What the standing observations of a jar mean at present.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="zone">The household's zone, in which days are told apart.</param>
    public static TroubleState Of(Jar jar, DateTimeZone zone)
    {
        var standing = jar.Standing.ToList();
        var measured = standing.OfType<PhMeasurement>().ToList();
        bool rising = AcidLine.Report(jar, zone).Alarm is AcidLineAlarm.Rise or AcidLineAlarm.BackAbove;
        var seen = standing.OfType<Sighting>().Where(sighting => IsTrouble(sighting.Kind))
            .Select(sighting => Course.Of(jar, sighting, measured.LastOrDefault()?.At, zone)).ToList();
        Sighting? pressure = Pressure(jar, standing);
        Course? counts = seen.Where(each => each.Withdraws || each.Watched).OrderBy(each => Rank(each.Seen.Kind)).ThenByDescending(each =>
            each.Seen.At).FirstOrDefault();
        return new TroubleState((counts ?? seen.LastOrDefault())?.Seen, rising
            || seen.Exists(each => each.Withdraws), seen.Exists(each => each.Watched))
        {
            Rising = rising, Pressure = pressure, Handled = counts?.Handled, WellDaysToGo = counts is { Handled: not null } handled ? handled.ToGo
                : 0,
            Remedy = counts is { Handled: null } open && Remedies.Of(open.Seen.Kind) is { } remedy ? remedy
                : counts is null && pressure is not null ? HandlingKind.GasLetOut : null,
        };
    }

    private static Sighting? Pressure(Jar jar, List<Observation> standing) =>
        standing.OfType<Sighting>().LastOrDefault(sighting => sighting.Kind == SightingKind.Gas) is { } gas
        && Remedies.Done(jar, gas) is null && !standing.OfType<Look>().Any(look => look.At > gas.At) ? gas : null;

    /// <summary>The worst first.</summary>
    private static int Rank(SightingKind kind) => kind switch
    {
        SightingKind.Slime => 1,
        SightingKind.FuzzOrUnsure => 2,
        SightingKind.BrineLow => 3,
        SightingKind.OffSmell => 4,
        SightingKind.Film => 5,
        SightingKind.PiecesUp => 6,
        _ => 7,
    };

    /// <summary>How far one sighting has gone towards its end.</summary>
    private sealed record Course(Sighting Seen, Handling? Handled, int ToGo, bool Withdraws, bool Watched)
    {
        public static Course Of(Jar jar, Sighting seen, Instant? measured, DateTimeZone zone)
        {
            Handling? handled = Remedies.Done(jar, seen);
            int toGo = handled is null ? 0 : Math.Max(0, WellDaysThatSettle - WellDays(jar, zone, look => Date(look, zone) > Date(handled, zone)));
            bool settled = handled is not null && toGo == 0;
            bool watched = !settled && WellDays(jar, zone, look => look.At > seen.At) < WellDaysThatEndTheWatch;
            return new Course(seen, handled, toGo, WithdrawsForecast(seen.Kind) && !settled && !(measured > seen.At), watched);
        }

        private static int WellDays(Jar jar, DateTimeZone zone, Func<Look, bool> counts) =>
            jar.Standing.OfType<Look>().Where(counts).Select(look => Date(look, zone)).Distinct().Count();

        private static LocalDate Date(Observation observation, DateTimeZone zone) => observation.At.InZone(zone).Date;
    }
}

/// <summary>What trouble means for a jar at present.</summary>
/// <param name="Last">The sighting that counts: the worst that goes on, else the last there was; null if there never was one.</param>
/// <param name="ForecastWithdrawn">The model has no term for spoilage: nothing is forecast until a pH is measured or small trouble is
/// settled.</param>
/// <param name="CloserWatch">The jar is opened and looked at daily.</param>
public sealed record TroubleState(Sighting? Last, bool ForecastWithdrawn, bool CloserWatch)
{
    /// <summary>Whether the pH rises: by itself a reason to withdraw the forecast.</summary>
    public bool Rising { get; init; }

    /// <summary>Pressure or brine pushed out that nobody has seen to or found well since; null where there is none.</summary>
    public Sighting? Pressure { get; init; }

    /// <summary>What was done about <see cref="Last"/>; null where nothing was, or nothing settles it.</summary>
    public Handling? Handled { get; init; }

    /// <summary>Days on which all must be well before what was done settles it; 0 where nothing waits for that.</summary>
    public int WellDaysToGo { get; init; }

    /// <summary>What would settle <see cref="Last"/> or <see cref="Pressure"/> and was not done yet; null where nothing would.</summary>
    public HandlingKind? Remedy { get; init; }
}
