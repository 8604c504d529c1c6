namespace FermentWatch.Kitchen.Words;

/// <summary>When the gas comes and goes in the first week, by warmth. Common practice, no source.</summary>
public static class BubblingCourse
{
    private static readonly Dictionary<Warmth, Bubbling[]> Course = new()
    {
        [Warmth.Cold] = [Bubbling.None, Bubbling.None, Bubbling.None, Bubbling.None, Bubbling.Beginning, Bubbling.Beginning, Bubbling.Beginning],
        [Warmth.Cool] = [Bubbling.None, Bubbling.None, Bubbling.Beginning, Bubbling.Beginning, Bubbling.Liveliest, Bubbling.Liveliest,
            Bubbling.Liveliest],
        [Warmth.Usual] = [Bubbling.None, Bubbling.Beginning, Bubbling.Liveliest, Bubbling.Liveliest, Bubbling.Slowing, Bubbling.Slowing,
            Bubbling.Over],
        [Warmth.Warm] = [Bubbling.Beginning, Bubbling.Liveliest, Bubbling.Liveliest, Bubbling.Slowing, Bubbling.Over, Bubbling.Over, Bubbling.Over],
    };

    private static readonly Dictionary<Bubbling, string[]> Sights = new()
    {
        [Bubbling.None] =
        [
            "Little to see. The vegetables give juice.",
            "Still quiet; the brine may turn a little cloudy.",
            "Quiet yet: in the cool the first bubbles take their time.",
            "A bubble or none: it is slow in the cold.",
        ],
        [Bubbling.Beginning] =
        [
            "First bubbles, and brine that turns cloudy: normal.",
            "More bubbles; a smell of cabbage or radish: normal.",
            "Bubbles rise when the jar is tapped: normal.",
        ],
        [Bubbling.Liveliest] =
        [
            "The liveliest days: fizz, foam, cloudy brine, some may run over: normal.",
            "Still lively; brine that rises by day and sinks back overnight: normal.",
            "Lively yet; the colour begins to dull: normal.",
        ],
        [Bubbling.Slowing] =
        [
            "Bubbling slows; colour dulls and a pale sediment settles: normal.",
            "Fewer bubbles; the smell turns sour and clean.",
        ],
        [Bubbling.Over] =
        [
            "The bubbling is nearly over; sour work goes on quietly.",
            "Quiet, cloudy, a white sediment: normal.",
            "Quiet. The brine may sink a little.",
        ],
    };

    /// <summary>How far the gas is on a day.</summary>
    /// <param name="day">1 to 7.</param>
    /// <param name="warmth">How warm the jar stands.</param>
    public static Bubbling On(int day, Warmth warmth) => Course[warmth][day - 1];

    /// <summary>What is normal to see on a day; each day of a week has its own words.</summary>
    /// <param name="day">1 to 7.</param>
    /// <param name="warmth">How warm the jar stands.</param>
    public static string Looks(int day, Warmth warmth)
    {
        Bubbling[] course = Course[warmth];
        Bubbling today = course[day - 1];
        return Sights[today][course.Take(day - 1).Count(each => each == today)];
    }
}

/// <summary>How far the gas of the first days has come.</summary>
public enum Bubbling
{
    None = 1,
    Beginning = 2,
    Liveliest = 3,
    Slowing = 4,
    Over = 5,
}
