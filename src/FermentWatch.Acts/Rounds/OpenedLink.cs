using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Acts.Rounds;

/// <summary>A link that somebody followed.</summary>
/// <param name="State">What it is still good for.</param>
/// <param name="Notice">The notice it came with; null where <see cref="LinkState.Unknown"/>.</param>
/// <param name="Waiting">Its jars that nobody has answered for, by shelf.</param>
public sealed record OpenedLink(LinkState State, Notice? Notice, IReadOnlyList<AskedShelf> Waiting)
{
    /// <summary>Numbers of the jars that wait.</summary>
    public IEnumerable<int> Jars => Waiting.SelectMany(shelf => shelf.Jars);

    /// <summary>Numbers of those that were to be opened.</summary>
    public IEnumerable<int> ToOpen => Waiting.SelectMany(shelf => shelf.ToOpen);
}

/// <summary>What a link is still good for.</summary>
public enum LinkState
{
    /// <summary>We did not make it, or its notice is gone.</summary>
    Unknown = 1,

    /// <summary>Its day is over.</summary>
    Expired = 2,

    /// <summary>Every one of its jars is answered for.</summary>
    Settled = 3,

    /// <summary>It waits for an answer.</summary>
    Open = 4,
}
