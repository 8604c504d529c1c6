namespace FermentWatch.Web.Pages.Jars;

/// <summary>The move form as the browser sends it.</summary>
public sealed class MoveInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Place { get; set; }

    public string? At { get; set; }

    /// <summary>What is said of a form that was sent before with another place.</summary>
    public FermentWatch.Kitchen.RoundAnswers.Again Again { get; set; }
}
