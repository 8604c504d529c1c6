using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>Turns what somebody answers on a round into observations, once however often it is sent.</summary>
/// <param name="answerId">Identity of the answer, made with the page or message it was given on.</param>
/// <param name="by">Who answers.</param>
/// <param name="now">When it was looked at: the present, or before it where the answer could be sent only later.</param>
/// <param name="entered">When the answer came in.</param>
/// <param name="household">For its zone, and how it reads the time.</param>
/// <param name="role">What who answers is; a guest is no adult.</param>
/// <param name="again">What was said of a form sent before with other content.</param>
public sealed class Answering(Guid answerId, Person by, Instant now, Instant entered, Household household, MemberRole role,
    Again again = Again.NotSaid)
{
    private readonly LocalDate _today = now.InZone(household.Zone).Date;

    /// <summary>All well for these jars.</summary>
    /// <param name="jars">The jars of a shelf, without the exceptions.</param>
    /// <param name="opened">Whether they were opened.</param>
    public AnswerOutcome AllWell(IEnumerable<Jar> jars, bool opened)
    {
        var observations = new List<Observation>();
        var known = new List<string>();
        foreach (Jar jar in jars.Where(jar => jar.Stage == JarStage.Fermenting))
        {
            if (SentBefore(jar) is { } line)
                known.Add(line);
            else if (Today(jar).FirstOrDefault(each => each is Look or Sighting) is { } before)
                known.Add($"{jar.Number} was looked at by {before.By} at {Clock(before.At)}.");
            else
                observations.Add(new Look { Id = AnswerId.Of(answerId, jar.Id), JarId = jar.Id, At = now, EnteredAt = entered, By = by.Name,
                    ById = by.AccountId,
                    Opened = opened });
        }
        return new AnswerOutcome(observations, known, []);
    }

    /// <summary>Something was seen at one jar. What somebody wrote is filed, also when the same was seen today without those words.</summary>
    public AnswerOutcome Seen(Jar jar, SightingKind kind, string? note)
    {
        (Guid id, Guid? replaces, AnswerOutcome? settled) = Named(jar, Content(kind, Trim(note)));
        if ((settled ?? Ended(jar)) is { } outcome)
            return outcome;
        if (SafeText.WrongNote("note", note) is { } wrong)
            return new AnswerOutcome([], [], [wrong]);
        if (kind == SightingKind.Other && string.IsNullOrWhiteSpace(note))
            return Refused("note", note, "a few words on what was seen would be right");
        var before = Today(jar).OfType<Sighting>().Where(each => each.Kind == kind).ToList();
        if (replaces is null && before.Count > 0 && (Trim(note) is null || before.Exists(each => each.Note == Trim(note))))
            return Known($"{before[0].By} saw the same at jar {jar.Number} at {Clock(before[0].At)}.");
        return One(new Sighting { Id = id, JarId = jar.Id, At = now, EnteredAt = entered, By = by.Name, ById = by.AccountId, Kind = kind,
            Note = Trim(note),
            SeenAs = role }) with { Replaces = replaces };
    }

    /// <summary>Somebody tasted one jar.</summary>
    public AnswerOutcome Tasted(Jar jar, TasteVerdict verdict)
    {
        (Guid id, Guid? replaces, AnswerOutcome? settled) = Named(jar, Content(verdict));
        if ((settled ?? Ended(jar)) is { } outcome)
            return outcome;
        if (replaces is null && Today(jar).OfType<Taste>().FirstOrDefault(each => each.Verdict == verdict) is { } before)
            return Known($"{before.By} tasted jar {jar.Number} at {Clock(before.At)} and said the same.");
        return One(new Taste { Id = id, JarId = jar.Id, At = now, EnteredAt = entered, By = by.Name, ById = by.AccountId,
            Verdict = verdict }) with { Replaces = replaces };
    }

    /// <summary>Something was done about one jar.</summary>
    public AnswerOutcome Handled(Jar jar, HandlingKind kind)
    {
        if (SentBefore(jar) is { } line)
            return Known(line);
        if (Ended(jar) is { } refusal)
            return refusal;
        if (Today(jar).OfType<Handling>().FirstOrDefault(each => each.Kind == kind) is { } before
            && !Today(jar).OfType<Sighting>().Any(seen => seen.At > before.At))
            return Known($"{before.By} wrote the same for jar {jar.Number} at {Clock(before.At)}.");
        return One(new Handling { Id = AnswerId.Of(answerId, jar.Id), JarId = jar.Id, At = now, EnteredAt = entered, By = by.Name,
            ById = by.AccountId, Kind = kind });
    }

    /// <summary>One jar goes into the cold, is finished, or is thrown out; one in the freezer is finished or thrown out from there.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="stage">What it comes to.</param>
    /// <param name="why">A few words; needed for throwing out.</param>
    /// <param name="went">Where a finished jar went; null where nobody said.</param>
    /// <param name="givenTo">To whom it was given; null or empty where nobody said.</param>
    public AnswerOutcome Moved(Jar jar, JarStage stage, string? why, Destination? went = null, string? givenTo = null)
    {
        (Guid id, Guid? replaces, AnswerOutcome? settled) = Named(jar, Content(stage, went, Trim(givenTo)));
        if (settled is not null)
            return settled;
        bool leavesTheFreezer = jar.IsFrozen && stage is JarStage.Finished or JarStage.ThrownOut
            && went is not (Destination.Frozen or Destination.Canned);
        if (jar.Stage == stage && !leavesTheFreezer)
            return Known($"Jar {jar.Number} is {Words(jar)} already.{(Trim(why) is null ? "" : " What you wrote now was not kept.")}");
        if (replaces is null && !leavesTheFreezer && Ended(jar) is { } refusal)
            return refusal;
        if (Wrong(stage, why, went, Trim(givenTo)) is { } wrong)
            return new AnswerOutcome([], [], [wrong]);
        if (stage == JarStage.ThrownOut && string.IsNullOrWhiteSpace(why))
            return Refused("why", why, "a few words on why it was thrown out would be right: they help next time");
        return One(new StageChange { Id = id, JarId = jar.Id, At = now, EnteredAt = entered, By = by.Name, ById = by.AccountId, Stage = stage,
            Went = went, GivenTo = Trim(givenTo), Note = Trim(why) }) with { Replaces = replaces };
    }

    private static Refusal? Wrong(JarStage stage, string? why, Destination? went, string? givenTo) =>
        went is { } said && stage != JarStage.Finished
            ? new Refusal("went", said.ToString(), $"nothing would be right where a jar is {Words(stage)}: only a finished jar went somewhere")
        : givenTo is not null && went != Destination.GivenAway
            ? new Refusal("given to", givenTo, "a name is right only where the jar is given away")
        : (givenTo is null ? null : SafeText.WrongName("given to", givenTo)) ?? SafeText.WrongNote("why", why);

    /// <summary>
    /// The id an answer for a jar is filed under. Where this form was sent before with the same content it is settled; with other
    /// content it is asked about, and filed under an id of its own once somebody said what it is.
    /// </summary>
    private (Guid Id, Guid? Replaces, AnswerOutcome? Settled) Named(Jar jar, string content)
    {
        Guid id = AnswerId.Of(answerId, jar.Id);
        Observation? Filed(Guid of) => jar.Observations.Find(each => each.Id == of);
        SentForm sent = SentForm.Of(id, content, again, of => Filed(of) is { } filed ? Content(filed) : null);
        if (sent.IsFiled)
            return (id, null, Known(SentBefore(jar)!));
        return sent.IsAskedAbout
            ? (id, null, new AnswerOutcome([], [], []) { Asked = AskedAgain(Filed(id)!) })
            : (sent.Id, sent.Corrects && Filed(id)!.VoidedAt is null ? id : null, null);
    }

    private static string Content(Observation filed) => filed switch
    {
        Sighting seen => Content(seen.Kind, seen.Note),
        Taste taste => Content(taste.Verdict),
        StageChange change => Content(change.Stage, change.Went, change.GivenTo),
        _ => "",
    };

    private static string Content(SightingKind kind, string? note) => $"{kind}\n{note}";

    private static string Content(TasteVerdict verdict) => $"taste {verdict}";

    private static string Content(JarStage stage, Destination? went, string? givenTo) =>
        went is null ? $"stage {stage}" : $"stage {stage} {went}\n{givenTo}";

    /// <summary>What to ask of somebody whose form was sent before with something else.</summary>
    public static string AskedAgain(Observation sent) =>
        $"You sent this form before with \"{ObservationWords.Of(sent)}{(sent.Note is null ? "" : $": {sent.Note}")}\". Was that wrong, or are both "
        + "right?";

    private static AnswerOutcome? Ended(Jar jar) => jar.Stage is JarStage.Finished or JarStage.ThrownOut
        ? Refused("jar", jar.Number.ToString(CultureInfo.InvariantCulture), $"a jar that is kept would be right: this one is {Words(jar)}")
        : null;

    /// <summary>What to say if this very answer was filed for the jar before, on whatever day and even if it was taken back since.</summary>
    private string? SentBefore(Jar jar) => jar.Observations.Find(each => each.Id == AnswerId.Of(answerId, jar.Id)) is { } before
        ? $"{before.By}'s answer for jar {jar.Number} was taken at {Clock(before.At)} already."
        : null;

    private IEnumerable<Observation> Today(Jar jar) => jar.Standing.Where(each => each.At.InZone(household.Zone).Date == _today);

    private string Clock(Instant instant) => ClockWords.Of(instant, household);

    private static string Words(Jar jar) => jar.IsFrozen ? "in the freezer" : Words(jar.Stage);

    private static string Words(JarStage stage) => stage switch
    {
        JarStage.Cold => "in the cold",
        JarStage.Finished => "finished",
        JarStage.ThrownOut => "thrown out",
        _ => "fermenting",
    };

    private static string? Trim(string? note) => string.IsNullOrWhiteSpace(note) ? null : note.Trim();

    private static AnswerOutcome One(Observation observation) => new([observation], [], []);

    private static AnswerOutcome Known(string line) => new([], [line], []);

    private static AnswerOutcome Refused(string field, string? came, string wouldBeRight) =>
        new([], [], [new Refusal(field, string.IsNullOrWhiteSpace(came) ? "nothing" : came, wouldBeRight)]);
}
