using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>When a household is told of something: from its morning round until two hours after its evening reminder.</summary>
public static class OccasionHours
{
    private static readonly Period AfterEvening = Period.FromHours(2);

    /// <summary>Whether people are told at an instant.</summary>
    public static bool Hold(Household household, Instant now)
    {
        LocalDateTime local = now.InZone(household.Zone).LocalDateTime;
        return local.TimeOfDay >= household.RoundAt && local < local.Date + household.EveningAt + AfterEvening;
    }

    /// <summary>When a notice of this kind has become pointless.</summary>
    public static Instant Expiry(OccasionKind kind, Instant now) => kind switch
    {
        OccasionKind.TooWarm or OccasionKind.FarTooWarm or OccasionKind.TooCold => now + Duration.FromHours(18),
        OccasionKind.PhDue or OccasionKind.SensorSilent or OccasionKind.NoReadingByDay5 => now + Duration.FromDays(1),
        _ => now + Duration.FromDays(3),
    };
}
