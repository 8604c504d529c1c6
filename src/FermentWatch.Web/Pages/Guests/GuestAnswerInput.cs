namespace FermentWatch.Web.Pages.Guests;

/// <summary>A guest's answer as the browser sends it.</summary>
public sealed class GuestAnswerInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>Numbers of the jars that stood on the page's shelf, by comma.</summary>
    public string? Jars { get; set; }

    /// <summary>Numbers of the jars where something is wrong.</summary>
    public List<int>? Except { get; set; }

    /// <summary>The jar at which something was seen.</summary>
    public int Jar { get; set; }

    /// <summary>What was seen, by name.</summary>
    public string? What { get; set; }

    public string? Note { get; set; }

    /// <summary>What is said of a form that was sent before with another answer.</summary>
    public FermentWatch.Kitchen.RoundAnswers.Again Again { get; set; }
}
