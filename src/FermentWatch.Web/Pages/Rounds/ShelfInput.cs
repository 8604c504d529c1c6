namespace FermentWatch.Web.Pages.Rounds;

/// <summary>The answer for a shelf as the browser sends it.</summary>
public sealed class ShelfInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>Numbers of the jars that stood on the page's shelf, by comma.</summary>
    public string? Jars { get; set; }

    /// <summary>Numbers of the jars where something is wrong.</summary>
    public List<int>? Except { get; set; }

    /// <summary>Whether those that were to be opened were opened.</summary>
    public bool Opened { get; set; }
}
