using NodaTime;

namespace FermentWatch.Kitchen.Feeds;

/// <summary>The day on which a jar is tasted next.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="Number">Its number.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Date">The first day of tasting; today where that is past.</param>
/// <param name="Words">When to taste, in words.</param>
/// <param name="RevisedAt">When what this is drawn from last changed: a fact of the jar, or its forecast.</param>
public sealed record ComingTaste(Guid JarId, int Number, string Name, string Place, LocalDate Date, string Words, Instant RevisedAt);
