using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;

namespace FermentWatch.Acts;

/// <summary>An observation held against what was filed under the same id: a form may be sent twice, and changed in between.</summary>
/// <param name="Observation">What is to be filed; under an id of its own where it says something else than what was filed.</param>
/// <param name="IsFiled">Whether that is on record already.</param>
/// <param name="Asked">What is asked of somebody who sends other content and does not say what it is; null where nothing is.</param>
/// <param name="Corrects">What it takes the place of; null where it is one more.</param>
public sealed record SentBefore<T>(T Observation, bool IsFiled, string? Asked, Guid? Corrects) where T : Observation;

/// <summary>Holds what was read of a form against what was filed under its id.</summary>
public static class SentBefore
{
    /// <summary>Within so long the same by the same person is the same, sent from two pages that were open.</summary>
    private static readonly Duration Moment = Duration.FromMinutes(5);

    /// <summary>An entry of one jar, by the rule of <see cref="SentForm"/>.</summary>
    /// <param name="now">What was read of the form, under the form's id.</param>
    /// <param name="jar">The jar it is about, whole.</param>
    /// <param name="mark">Under which id it is entered, and what is said of other content.</param>
    /// <param name="content">All that one says, as one text.</param>
    /// <param name="under">The same under another id.</param>
    public static SentBefore<T> Of<T>(T now, Jar jar, EntryMark mark, Func<T, string> content, Func<Guid, T> under) where T : Observation
    {
        Observation? Filed(Guid id) => jar.Observations.Find(each => each.Id == id);
        SentForm sent = SentForm.Of(mark.Id, content(now), mark.Again, id => Filed(id) is { } filed ? filed is T same ? content(same) : "" : null);
        if (sent.IsAskedAbout)
            return new SentBefore<T>(now, false, Answering.AskedAgain(Filed(mark.Id)!), null);
        if (sent.IsFiled)
            return new SentBefore<T>((T)Filed(sent.Id)!, true, null, null);
        if (Filed(mark.Id) is null && jar.Standing.OfType<T>().FirstOrDefault(each => (each.By, each.ById) == (now.By, now.ById)
            && content(each) == content(now) && each.At - now.At <= Moment && now.At - each.At <= Moment) is { } twin)
            return new SentBefore<T>(twin, true, null, null);
        bool takesItsPlace = sent.Corrects && Filed(mark.Id)!.VoidedAt is null;
        return new SentBefore<T>(sent.Id == mark.Id ? now : under(sent.Id), false, null, takesItsPlace ? mark.Id : null);
    }
}
