using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Away;
using NodaTime;

namespace FermentWatch.Kitchen.Planning;

/// <summary>Why nothing is started on days on which somebody had time.</summary>
public enum NotPlanned
{
    /// <summary>Colder than 60 F: kraut may not ferment (USDA Complete Guide to Home Canning, Guide 6).</summary>
    TooCold = 1,

    /// <summary>Warmer than 75 F: kraut may go soft (the same).</summary>
    TooWarm = 2,

    /// <summary>Fewer than nine in ten jars are expected below pH 4.6 within a week.</summary>
    LineLate = 3,

    /// <summary>Fewer than nine in ten jars get as sour within the longest span that is planned.</summary>
    NeverSour = 4,
}

/// <summary>The days on which something can be started.</summary>
/// <param name="Possible">Those, by day.</param>
/// <param name="Refused">How many days were left out for which reason.</param>
public sealed record StartDays(IReadOnlyList<StartDay> Possible, IReadOnlyDictionary<NotPlanned, int> Refused)
{
    /// <summary>60 F and 75 F: outside of them nothing is planned.</summary>
    public static readonly double ColdestCelsius = CustomaryUnits.CelsiusFromFahrenheit(60),
        WarmestCelsius = CustomaryUnits.CelsiusFromFahrenheit(75);

    private const int FirstWeeks = 21, LastingOfAMonth = 62, DaysInAMonth = 30;

    /// <summary>Goes through the days from today to the last one eaten.</summary>
    /// <param name="question">The question.</param>
    /// <param name="readyIn">When a jar is sour in such a room; null where fewer than nine in ten get there.</param>
    public static StartDays Of(PlanQuestion question, Func<RoomAhead, ReadyDays?> readyIn)
    {
        var possible = new List<StartDay>();
        var refused = new Dictionary<NotPlanned, int>();
        foreach (LocalDate date in Enumerable.Range(0, question.Day(question.Until) + 1).Select(question.Date).Where(date => HasTime(question, date)))
        {
            RoomAhead room = RoomFrom(question, date);
            ReadyDays? ready = ReadyFrom(question, date, readyIn);
            double spell = room.WarmFromDay < (ready?.Late ?? LastingOfAMonth) ? room.WarmByCelsius : 0;
            double coldest = room.Celsius + Math.Min(0, spell), warmest = room.Celsius + Math.Max(0, spell);
            NotPlanned? why = coldest < ColdestCelsius ? NotPlanned.TooCold : warmest > WarmestCelsius ? NotPlanned.TooWarm
                : ready is null ? NotPlanned.NeverSour : ready.IsLineLate ? NotPlanned.LineLate : null;
            if (why is { } reason)
                refused[reason] = refused.GetValueOrDefault(reason) + 1;
            else
                possible.Add(new StartDay(question.Day(date), OnAverage(room), ready!,
                    question.Away.Any(each => BeforeYouGo.IsTooSoon(date, each.From))));
        }
        return new StartDays(possible, refused);
    }

    private static bool HasTime(PlanQuestion question, LocalDate date) =>
        question.Days.Contains(date.DayOfWeek) && !question.Away.Any(absence => absence.Holds(date));

    /// <summary>Asked for every seventh day before and in a month that may be warmer, and between two of them in a straight line.</summary>
    private static ReadyDays? ReadyFrom(PlanQuestion question, LocalDate date, Func<RoomAhead, ReadyDays?> readyIn)
    {
        if (RoomFrom(question, date).WarmByCelsius == 0)
            return readyIn(RoomFrom(question, date));
        int after = Math.Clamp(DaysIntoMonth(question.Warm!, date), -LastingOfAMonth, DaysInAMonth), past = ((after % 7) + 7) % 7;
        ReadyDays? before = readyIn(RoomAt(question, after - past));
        return past == 0 || before is null || readyIn(RoomAt(question, after - past + 7)) is not { } next ? before : before.Towards(next, past / 7.0);
    }

    /// <summary>The room from a date on; a month that may be warmer counts where it reaches into the first two months.</summary>
    private static RoomAhead RoomFrom(PlanQuestion question, LocalDate date) => question.Warm is { } warm && DaysIntoMonth(warm, date) is var after
        && after > -LastingOfAMonth ? RoomAt(question, after) : new RoomAhead(question.Room.MeanCelsius, question.Room.SpreadCelsius);

    private static RoomAhead RoomAt(PlanQuestion question, int daysIntoMonth) => new(question.Room.MeanCelsius, question.Room.SpreadCelsius,
        Math.Max(0, -daysIntoMonth), Math.Max(0, DaysInAMonth - daysIntoMonth), daysIntoMonth < DaysInAMonth ? question.Warm!.ByCelsius : 0);

    /// <summary>Days from the first of the month to a date, of this month or the next one of its name; below 0 before it.</summary>
    private static int DaysIntoMonth(WarmMonth warm, LocalDate date) =>
        Period.DaysBetween(new LocalDate(date.Year + (warm.Month < date.Month ? 1 : 0), warm.Month, 1), date);

    private static double OnAverage(RoomAhead room) =>
        room.Celsius + (room.WarmByCelsius * Math.Clamp(Math.Min(FirstWeeks, room.WarmUntilDay) - room.WarmFromDay, 0, FirstWeeks) / FirstWeeks);
}
