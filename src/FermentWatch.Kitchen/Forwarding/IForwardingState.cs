namespace FermentWatch.Kitchen.Forwarding;

/// <summary>How the passing on of series stands. There is none where nothing is passed on.</summary>
public interface IForwardingState
{
    /// <summary>Why points wait, in one line; null when none do.</summary>
    string? Trouble { get; }
}
