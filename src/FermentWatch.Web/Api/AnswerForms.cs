namespace FermentWatch.Web.Api;

/// <summary>All well.</summary>
/// <param name="PlaceId">The shelf; null for every shelf.</param>
/// <param name="Except">Numbers that are left open.</param>
/// <param name="Opened">Whether the jars were opened.</param>
public sealed record AllWellForm(Guid? PlaceId, IReadOnlyList<int>? Except, bool Opened);

/// <summary>An answer for one jar.</summary>
/// <param name="Jar">Its number.</param>
/// <param name="What">What was seen, how it tastes, or where it goes, by name.</param>
/// <param name="Note">A few words; needed for something else seen and for throwing out.</param>
public sealed record JarAnswerForm(int Jar, string? What, string? Note);

/// <summary>All well, or later, by a link.</summary>
/// <param name="Opened">Whether the jars that were to be opened were opened.</param>
/// <param name="Later">Asks again in two hours instead.</param>
public sealed record LinkAnswerForm(bool Opened, bool Later = false);

/// <summary>What a sensor measures from now on.</summary>
/// <param name="Where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
public sealed record GiveSensorForm(string? Where);
