namespace FermentWatch.Service.Api;

/// <summary>What a sensor measures from now on.</summary>
/// <param name="Where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
public sealed record GiveSensorForm(string? Where);
