namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>
/// A form held against what was filed under its id: the same sent twice is that once; something else under the same id is asked about,
/// takes the place of what was filed, or is one more, as was said.
/// </summary>
/// <param name="Id">Under which id it is filed: the form's, or one of its own where it says something else than what was filed.</param>
/// <param name="IsFiled">Whether that is on record already.</param>
/// <param name="IsAskedAbout">Whether it says something else, and nobody said yet what that is.</param>
/// <param name="Corrects">Whether it takes the place of what was filed under the form's id.</param>
public readonly record struct SentForm(Guid Id, bool IsFiled, bool IsAskedAbout, bool Corrects)
{
    /// <summary>Holds it against the record.</summary>
    /// <param name="form">Id of the form.</param>
    /// <param name="content">All that it says, as one text.</param>
    /// <param name="again">What was said of other content.</param>
    /// <param name="filed">What was filed under an id, as one text; null where nothing was.</param>
    public static SentForm Of(Guid form, string content, Again again, Func<Guid, string?> filed)
    {
        if (filed(form) is not { } before)
            return new SentForm(form, false, false, false);
        if (before == content)
            return new SentForm(form, true, false, false);
        Guid own = OwnId(form, content);
        if (filed(own) is not null)
            return new SentForm(own, true, false, false);
        return again == Again.NotSaid ? new SentForm(form, false, true, false) : new SentForm(own, false, false, again == Again.Correction);
    }

    /// <summary>Under which id something else than what was filed is filed.</summary>
    public static Guid OwnId(Guid form, string content) => AnswerId.Of(form, AnswerId.Named(content));
}
