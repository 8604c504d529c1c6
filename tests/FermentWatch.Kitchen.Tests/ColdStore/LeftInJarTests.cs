using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.ColdStore;

public class LeftInJarTests
{
    [Theory]
    [InlineData(new[] { 0.125 }, "most of it left")]
    [InlineData(new[] { 0.25 }, "about three quarters left")]
    [InlineData(new[] { 1 / 3.0 }, "about two thirds left")]
    [InlineData(new[] { 0.25, 0.25 }, "about half left")]
    [InlineData(new[] { 0.25, 0.25, 0.125 }, "about a third left")]
    [InlineData(new[] { 0.5, 0.25 }, "about a quarter left")]
    [InlineData(new[] { 0.5, 0.25, 0.125 }, "little left")]
    [InlineData(new[] { 0.5, 0.5 }, "nothing left, as reckoned")]
    [InlineData(new[] { 0.75, 0.75 }, "nothing left, as reckoned")]
    public void Words_SharesTaken_TellWhatIsLeftRoughly(double[] taken, string words) =>
        Assert.Equal(words, LeftInJar.Words(Make.Jar(1, seen: [.. taken.Select((share, day) => Make.Portion(30 + day, share))])));

    [Fact]
    public void Words_NothingTaken_SayNothing()
    {
        Assert.Null(LeftInJar.Words(Make.Jar(1)));
        Assert.Null(LeftInJar.Words(Make.Jar(1, seen: Make.Opened(30))));
        Assert.Equal(1, LeftInJar.FractionOf(Make.Jar(1, seen: Make.Opened(30))));
    }

    /// <summary>
    /// 0.8 kg of shredded cabbage gives 0.8 x (0.751 + 1.043) / 2 = 0.718 l at the table, a litre of which weighs a kilogram; of 0.8 kg of
    /// cucumbers, of which a litre weighs 0.6 kg, it is 1.196 l.
    /// </summary>
    [Fact]
    public void FractionOf_VolumeOrWeight_IsHeldAgainstWhatComesToTheTable()
    {
        Jar cabbage = Make.Jar(1), whole = Make.Jar(2);
        whole.Cut = Kinetics.Produce.Cut.Whole;
        Assert.Equal(0.348, LeftInJar.FractionOf(cabbage, Make.Portion(30, litres: 0.25)), 0.001);
        Assert.Equal(0.279, LeftInJar.FractionOf(cabbage, Make.Portion(30, kilograms: 0.2)), 0.001);
        Assert.Equal(0.209, LeftInJar.FractionOf(whole, Make.Portion(30, litres: 0.25)), 0.001);
        Assert.Equal(0.279, LeftInJar.FractionOf(whole, Make.Portion(30, kilograms: 0.2)), 0.001);
    }

    [Fact]
    public void OpenSince_IsTheFirstPortionOrWhenSomebodySaidSo_AndFollowsWhatIsTakenBack()
    {
        PortionTaken portion = Make.Portion(31, 0.25);
        Jar jar = Make.Jar(1, seen: [Make.Look(3), portion, Make.Opened(33)]);
        Assert.Equal(Make.Day(31), LeftInJar.OpenSince(jar));
        portion.VoidedAt = Make.Day(34);
        Assert.Equal(Make.Day(33), LeftInJar.OpenSince(jar));
        Assert.Null(LeftInJar.OpenSince(Make.Jar(2, seen: Make.Look(3))));
    }
}
