using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>What is for adults: children and guests look and report, adults settle trouble, enter pH and taste first.</summary>
public static class ChildRules
{
    /// <summary>Why this person may not taste the jar; null where this person may.</summary>
    public static Refusal? Tasting(MemberRole role, Jar jar) =>
        role == MemberRole.Adult || jar.Standing.OfType<Taste>().Any() ? null
            : new Refusal("taste", "a first taste", "an adult tastes first: ask one");

    /// <summary>
    /// Why this person may not take a portion out of a jar or open it to eat; null where this person may. What stands in the cold, or was
    /// tasted, an adult has let go; while something is wrong with it an adult looks first.
    /// </summary>
    /// <param name="role">What this person may do.</param>
    /// <param name="jar">The jar.</param>
    /// <param name="zone">The household's zone, in which days of trouble are told apart.</param>
    public static Refusal? Taking(MemberRole role, Jar jar, DateTimeZone zone) => role == MemberRole.Adult ? null
        : Trouble.Of(jar, zone) is { ForecastWithdrawn: true } or { CloserWatch: true }
            ? new Refusal("jar", "a jar in which something was seen", "an adult looks at it first: ask one")
        : jar.Stage == JarStage.Cold || jar.Standing.OfType<Taste>().Any() ? null
            : new Refusal("jar", "a jar nobody has tasted", "an adult tastes first: ask one");

    /// <summary>Why this person may not move or end a jar; null where this person may.</summary>
    public static Refusal? Moving(MemberRole role) =>
        role == MemberRole.Adult ? null : new Refusal("jar", "this", "an adult decides where a jar goes: ask one");

    /// <summary>Why this person may not settle trouble or decide about a jar; null where this person may.</summary>
    public static Refusal? Settling(MemberRole role) =>
        role == MemberRole.Adult ? null : new Refusal("jar", "what was done", "an adult settles trouble: ask one");

    /// <summary>Why this person may not put the record of a jar right; null where this person may.</summary>
    public static Refusal? Correcting(MemberRole role) =>
        role == MemberRole.Adult ? null : new Refusal("jar", "this", "an adult puts the record right: ask one");

    /// <summary>Why this person may not take an entry back; a child may take back what it entered itself.</summary>
    public static Refusal? TakingBack(MemberRole role, Person by, Observation observation) =>
        role == MemberRole.Adult || (by.Is(observation.ById) && observation is Look or Sighting or PortionTaken or JarOpened) ? null
            : new Refusal("entry", "somebody else's", "an adult takes it back: ask one");

    /// <summary>Why this person may not enter a pH; null where this person may.</summary>
    public static Refusal? Measuring(MemberRole role) =>
        role == MemberRole.Adult ? null : new Refusal("pH", "a reading", "an adult enters it: ask one");
}
