namespace FermentWatch.Service.Api;

/// <summary>Whether a kind of occasion is muted.</summary>
/// <param name="Muted">True: nobody is told of it.</param>
public sealed record MuteForm(bool Muted);
