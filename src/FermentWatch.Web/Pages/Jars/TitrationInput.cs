using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>The titration form as the browser sends it.</summary>
public sealed class TitrationInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Percent { get; set; }

    public string? BaseMillilitres { get; set; }

    public string? BaseNormality { get; set; }

    public string? SampleMillilitres { get; set; }

    public string? At { get; set; }

    public string? Note { get; set; }

    /// <summary>What is said of a form that was sent before with another figure.</summary>
    public Again Again { get; set; }

    public TitrationForm ToForm() => new()
    {
        Percent = Percent, BaseMillilitres = BaseMillilitres, BaseNormality = BaseNormality, SampleMillilitres = SampleMillilitres, At = At,
            Note = Note,
    };
}
