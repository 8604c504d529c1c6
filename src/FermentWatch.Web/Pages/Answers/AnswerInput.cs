namespace FermentWatch.Web.Pages.Answers;

/// <summary>The answer as the browser sends it.</summary>
public sealed class AnswerInput
{
    /// <summary>Sent by every browser, so that the answer is bound though no box is ticked.</summary>
    public bool Sent { get; set; }

    /// <summary>Whether it is put off instead.</summary>
    public bool Later { get; set; }

    /// <summary>Whether the jars that were to be opened were opened.</summary>
    public bool Opened { get; set; }
}
