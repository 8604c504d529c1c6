using NodaTime;

namespace FermentWatch.Kitchen.Feeds;

/// <summary>The secret address of one person's calendar. Whoever knows it reads the tasting days and rounds, and nothing else.</summary>
/// <param name="Person">The name the household uses; the key.</param>
/// <param name="Secret">The secret part of the address, letters and digits only.</param>
/// <param name="MadeAt">When it was made.</param>
public sealed record CalendarFeed(string Person, string Secret, Instant MadeAt);
