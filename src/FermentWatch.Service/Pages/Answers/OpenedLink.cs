using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Service.Pages.Answers;

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
