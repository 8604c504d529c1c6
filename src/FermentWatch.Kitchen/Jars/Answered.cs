using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Jars;

/// <summary>Whether somebody has answered for a jar on a date: the one rule that page, round, notice, topic and calendar ask.</summary>
public static class Answered
{
    /// <summary>Whoever looked, saw something, tasted, did something or moved it has stood before it; a pH may be entered from elsewhere.</summary>
    public static bool By(Observation observation) => observation is Look or Sighting or Taste or Handling or StageChange;

    /// <summary>The answers that stand, by time.</summary>
    public static IEnumerable<Observation> Of(Jar jar) => jar.Standing.Where(By);

    /// <summary>Whether one of them is of this date.</summary>
    public static bool On(Jar jar, LocalDate date, DateTimeZone zone) => Of(jar).Any(answer => answer.At.InZone(zone).Date == date);
}
