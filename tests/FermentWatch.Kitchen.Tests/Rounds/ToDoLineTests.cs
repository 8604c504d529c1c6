using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class ToDoLineTests
{
    private static readonly RoundJar[] Jars =
    [
        On(1, new NextStep(StepKind.Measure, "", "measure the pH")),
        On(2, new NextStep(StepKind.SeeTo, "", "film", "skim it off")),
        On(3, new NextStep(StepKind.Mould, "", "slime", "throw it out, taste nothing")),
        On(4, new NextStep(StepKind.SeeTo, "", "film", "skim it off")),
        On(5, NextStep.Look(opening: true)),
    ];

    [Fact]
    public void Of_AnAdult_HasTheWorstFirstAndLikeJarsInOneLine() =>
        Assert.Equal(["3: slime: throw it out, taste nothing", "2, 4: film: skim it off", "1: measure the pH"], Said(isAdult: true));

    [Fact]
    public void Of_AChild_IsToldOfTroubleOnlyAndToCallAnAdult() =>
        Assert.Equal(["3: slime: call an adult, do not open", "2, 4: film: show an adult"], Said(isAdult: false));

    private static IEnumerable<string> Said(bool isAdult) => ToDoLine.Of(Jars, isAdult).Select(line => $"{NumberList.Say(line.Jars)}: {line.What}");

    private static RoundJar On(int number, NextStep step) =>
        new(Make.Jar(number), 9, [], Opening: false, Trouble: null, DaysNotLookedAt: 0, LookedAtToday: false) { Step = step };
}
