using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Away;

/// <summary>What one jar will need while nobody is there.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Lines">What it needs and what to do before leaving, the most pressing first; at least one.</param>
/// <param name="Daily">Whether it needs somebody every day: ask somebody to look in.</param>
public sealed record AwayNeed(Jar Jar, string Place, IReadOnlyList<string> Lines, bool Daily);
