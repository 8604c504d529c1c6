using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.Rounds;

/// <summary>An answer about one jar as the browser sends it: which button, and a note.</summary>
public sealed class SeenInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>The name of what was chosen.</summary>
    public string? Choice { get; set; }

    public string? Note { get; set; }

    /// <summary>What is said of a form that was sent before with another answer.</summary>
    public FermentWatch.Kitchen.RoundAnswers.Again Again { get; set; }

    /// <summary>Where it goes, for a jar that goes into the cold.</summary>
    public string? Place { get; set; }
}
