namespace FermentWatch.Service.Api;

/// <summary>Whether people are asked to taste.</summary>
/// <param name="Paused">True for a week without; false for again from today on.</param>
public sealed record PauseForm(bool Paused);
