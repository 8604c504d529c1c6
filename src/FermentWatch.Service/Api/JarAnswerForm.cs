namespace FermentWatch.Service.Api;

/// <summary>An answer for one jar.</summary>
/// <param name="Jar">Its number.</param>
/// <param name="What">What was seen, how it tastes, or where it goes, by name.</param>
/// <param name="Note">A few words; needed for something else seen and for throwing out.</param>
public sealed record JarAnswerForm(int Jar, string? What, string? Note);
