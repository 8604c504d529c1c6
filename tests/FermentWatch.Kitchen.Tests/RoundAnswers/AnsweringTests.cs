using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.RoundAnswers;

public class AnsweringTests
{
    private static readonly Guid Answer = new("0199a000-0000-7000-8000-000000000001");

    [Fact]
    public void AllWell_SameAnswerTwice_MakesTheSameObservations()
    {
        Jar[] shelf = [Make.Jar(1), Make.Jar(2)];
        var once = By("Mira").AllWell(shelf, opened: false).Observations.Select(each => each.Id).ToList();
        Assert.Equal(2, once.Distinct().Count());
        Assert.Equal(once, By("Mira").AllWell(shelf, opened: false).Observations.Select(each => each.Id));
    }

    [Fact]
    public void AllWell_TwoPeople_TheSecondLearnsWhoWasFirst()
    {
        AnswerOutcome outcome = By("Jonah").AllWell([Make.Jar(1, seen: Make.Look(4)), Make.Jar(2)], opened: false);
        Assert.Equal(["1 was looked at by Mira at 16:00."], outcome.Known);
        Assert.Single(outcome.Observations);
    }

    [Fact]
    public void EveryAnswer_SentAgainOnAnotherDay_IsKnown()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(Assert.Single(By("Mira").Seen(jar, SightingKind.Film, null).Observations));
        var again = new Answering(Answer, new Person("Mira"), Make.Day(5.1), Make.Day(5.1), Make.Household("UTC"), MemberRole.Adult);
        foreach (AnswerOutcome outcome in (AnswerOutcome[])[
            again.Seen(jar, SightingKind.Film, null), again.AllWell([jar], opened: false)])
        {
            Assert.Empty(outcome.Observations);
            Assert.Equal(["Mira's answer for jar 1 was taken at 18:24 already."], outcome.Known);
        }
    }

    [Fact]
    public void Moved_GivenAway_KeepsToWhomAndASecondPressIsKnown()
    {
        Jar jar = Make.Jar(1);
        var given = (StageChange)Assert.Single(By("Mira").Moved(jar, JarStage.Finished, null, Destination.GivenAway, " Ash ").Observations);
        Assert.Equal((Destination.GivenAway, "Ash"), (given.Went, given.GivenTo));
        jar.Observations.Add(given);
        Assert.Empty(By("Mira").Moved(jar, JarStage.Finished, null, Destination.GivenAway, "Ash").Observations);
        Assert.StartsWith("You sent this form before with \"given away to Ash\".",
            By("Mira").Moved(jar, JarStage.Finished, null, Destination.Frozen).Asked, StringComparison.Ordinal);
    }

    [Fact]
    public void Moved_OutOfTheFreezer_EndsWhereItWentAndNothingElseMoves()
    {
        Jar frozen = Make.Jar(1, seen: Make.Went(Destination.Frozen, 2));
        Assert.Equal(Destination.Eaten,
            ((StageChange)Assert.Single(By("Mira").Moved(frozen, JarStage.Finished, null, Destination.Eaten).Observations)).Went);
        Assert.Single(By("Mira").Moved(frozen, JarStage.ThrownOut, "left out overnight").Observations);
        Assert.Equal(["Jar 1 is in the freezer already."], By("Mira").Moved(frozen, JarStage.Finished, null, Destination.Frozen).Known);
        Assert.Equal("a jar that is kept would be right: this one is in the freezer",
            Assert.Single(By("Mira").Moved(frozen, JarStage.Cold, null).Refusals).WouldBeRight);
    }

    [Theory]
    [InlineData(JarStage.Cold, Destination.Frozen, null, "went")]
    [InlineData(JarStage.ThrownOut, Destination.Eaten, null, "went")]
    [InlineData(JarStage.Finished, Destination.Eaten, "Ash", "given to")]
    [InlineData(JarStage.Finished, null, "Ash", "given to")]
    [InlineData(JarStage.Finished, Destination.GivenAway, "A\u202Esh", "given to")]
    public void Moved_WhereNoJarGoesSo_NamesTheField(JarStage stage, Destination? went, string? to, string field) =>
        Assert.Equal(field, Assert.Single(By("Mira").Moved(Make.Jar(1), stage, "soft", went, to).Refusals).Field);

    [Fact]
    public void Tasted_SameFormWithAnotherVerdict_IsAskedAboutAndThenTakesThePlaceOrStandsBeside()
    {
        Jar jar = Make.Jar(1);
        Observation sent = Assert.Single(By("Mira").Tasted(jar, TasteVerdict.NotYet).Observations);
        jar.Observations.Add(sent);
        AnswerOutcome asked = By("Mira").Tasted(jar, TasteVerdict.Nearly);
        Assert.Empty(asked.Observations);
        Assert.Equal("You sent this form before with \"tasted: not yet\". Was that wrong, or are both right?", asked.Asked);

        AnswerOutcome corrected = Said(Again.Correction).Tasted(jar, TasteVerdict.Nearly);
        Assert.Equal((sent.Id, TasteVerdict.Nearly), (corrected.Replaces, Assert.IsType<Taste>(Assert.Single(corrected.Observations)).Verdict));
        AnswerOutcome both = Said(Again.Another).Tasted(jar, TasteVerdict.Nearly);
        Assert.Null(both.Replaces);
        jar.Observations.Add(Assert.Single(both.Observations));
        Assert.Single(Said(Again.Another).Tasted(jar, TasteVerdict.Nearly).Known);
    }

    [Fact]
    public void Moved_SameFormWithAnotherStage_IsAskedAbout()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(Assert.Single(By("Mira").Moved(jar, JarStage.ThrownOut, "soft").Observations));
        Assert.StartsWith("You sent this form before with \"thrown out: soft\".", By("Mira").Moved(jar, JarStage.Finished, null).Asked,
            StringComparison.Ordinal);
        Assert.Equal(jar.Observations[0].Id, Said(Again.Correction).Moved(jar, JarStage.Finished, null).Replaces);
    }

    private static Answering Said(Again again) =>
        new(Answer, new Person("Mira"), Make.Day(5.1), Make.Day(5.1), Make.Household("UTC"), MemberRole.Adult, again);

    [Fact]
    public void Seen_TheSameWithOtherWords_IsKeptAndWithoutWordsIsKnown()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(Assert.Single(By("Mira").Seen(jar, SightingKind.Other, "smells of pears").Observations));
        jar.Observations.Add(Assert.Single(OnAnotherForm("Jakob").Seen(jar, SightingKind.Other, "GLASS IS CRACKED").Observations));
        Assert.Equal(["GLASS IS CRACKED", "smells of pears"], jar.Standing.Select(each => each.Note).Order(StringComparer.Ordinal));
        Assert.Single(OnAnotherForm("Mira").Seen(jar, SightingKind.Other, "GLASS IS CRACKED").Known);
        jar.Observations.Add(Assert.Single(OnAnotherForm("Mira").Seen(jar, SightingKind.Film, "a thin one").Observations));
        Assert.Single(OnAnotherForm("Jakob").Seen(jar, SightingKind.Film, null).Known);
    }

    [Fact]
    public void Seen_TheSameFormWithOtherWords_IsAskedAboutAndThenTakesThePlaceOrStandsBeside()
    {
        Jar jar = Make.Jar(1);
        Observation sent = Assert.Single(By("Mira").Seen(jar, SightingKind.Other, "a crack").Observations);
        jar.Observations.Add(sent);
        AnswerOutcome asked = By("Mira").Seen(jar, SightingKind.Other, "a crack, and it leaks");
        Assert.Empty(asked.Observations);
        Assert.Equal("You sent this form before with \"seen: something else: a crack\". Was that wrong, or are both right?", asked.Asked);
        Assert.NotNull(By("Mira").Seen(jar, SightingKind.Film, null).Asked);

        AnswerOutcome corrected = Said(Again.Correction).Seen(jar, SightingKind.Other, "a crack, and it leaks");
        Assert.Equal((sent.Id, "a crack, and it leaks"), (corrected.Replaces, Assert.Single(corrected.Observations).Note));
        AnswerOutcome both = Said(Again.Another).Seen(jar, SightingKind.Other, "a crack, and it leaks");
        Assert.Null(both.Replaces);
        jar.Observations.Add(Assert.Single(both.Observations));
        Assert.Single(Said(Again.Another).Seen(jar, SightingKind.Other, "a crack, and it leaks").Known);
        Assert.Single(By("Mira").Seen(jar, SightingKind.Other, "a crack").Known);
    }

    [Fact]
    public void Moved_ToWhereItIsWithWords_SaysThatTheyWereNotKept() =>
        Assert.Equal(["Jar 5 is thrown out already. What you wrote now was not kept."],
            By("Mira").Moved(Make.Jar(5, seen: Make.Stage(JarStage.ThrownOut, 2)), JarStage.ThrownOut, "soft all through").Known);

    [Fact]
    public void Seen_OtherWithoutANote_IsRefused() =>
        Assert.Equal("note", Assert.Single(By("Mira").Seen(Make.Jar(1), SightingKind.Other, " ").Refusals).Field);

    [Fact]
    public void Seen_ThrownOutJar_SaysSo()
    {
        var outcome = By("Mira")
            .Seen(Make.Jar(5, seen: new StageChange { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Make.Day(2), EnteredAt = Make.Day(2),
            By = "Mira", Stage = JarStage.ThrownOut }), SightingKind.Film, null);
        Assert.Equal("jar: 5 cannot be used. Enter a jar that is kept: this one is thrown out.", Assert.Single(outcome.Refusals).ToString());
    }

    [Fact]
    public void Moved_ThrownOutWithoutAReason_IsRefused() =>
        Assert.Equal("why", Assert.Single(By("Mira").Moved(Make.Jar(1), JarStage.ThrownOut, null).Refusals).Field);

    private static Answering OnAnotherForm(string name) =>
        new(Guid.NewGuid(), new Person(name), Make.Day(4.1), Make.Day(4.1), Make.Household("UTC"), MemberRole.Adult);

    private static Answering By(string name) => new(Answer, new Person(name), Make.Day(4.1), Make.Day(4.1), Make.Household("UTC"), MemberRole.Adult);
}
