using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>What somebody typed or tapped to say what was taken out of a jar.</summary>
public sealed class PortionInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>The step that was tapped, as a share of the full jar.</summary>
    public string? Choice { get; set; }

    public string? Amount { get; set; }

    public string? At { get; set; }

    public string? Note { get; set; }

    /// <summary>What is said of a form that was sent before with another amount.</summary>
    public Again Again { get; set; }

    public PortionForm ToForm() => new() { Amount = Choice ?? Amount, At = At, Note = Note };
}
