using NodaTime;
using NodaTime.TimeZones;

namespace FermentWatch.Kitchen.Households;

/// <summary>The zone of the machine by its name in the tz database: a first guess at the kitchen's.</summary>
public static class MachineZone
{
    /// <summary>The zone; null where its name is in no way one of the tz database.</summary>
    public static DateTimeZone? Of(TimeProvider clock)
    {
        string name = clock.LocalTimeZone.Id;
        string tzdb = TzdbDateTimeZoneSource.Default.WindowsToTzdbIds.GetValueOrDefault(name, name);
        return DateTimeZoneProviders.Tzdb.GetZoneOrNull(tzdb);
    }
}
