namespace FermentWatch.Service.Settings;

/// <summary>Settings as they were read, with everything that is wrong with them.</summary>
/// <param name="Settings">What was read; where something is wrong, with the default in its place.</param>
/// <param name="Errors">One line each: which setting, what came, what would be right, where it was set. Empty if all is well.</param>
public sealed record SettingsReading(ServiceSettings Settings, IReadOnlyList<string> Errors)
{
    /// <summary>Every error in one message; empty if all is well.</summary>
    public string Message => Errors.Count == 0 ? ""
        : string.Join(Environment.NewLine, Errors.Prepend(Errors.Count == 1 ? "One setting is wrong:" : $"{Errors.Count} settings are wrong:"));

    /// <summary>The settings, for one who has shown the errors already.</summary>
    /// <exception cref="ArgumentException">Something is wrong; the message says everything at once.</exception>
    public ServiceSettings OrThrow() => Errors.Count == 0 ? Settings : throw new ArgumentException(Message);
}
