using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Planning;

public class PlanReadingTests
{
    private static readonly LocalDate Today = new(2026, 8, 15);

    private static readonly PlanForm Right = PlanForm.Of(_ => null).With(
        (PlanForm.What, "cabbage"), (PlanForm.Salt, "2.25 %"), (PlanForm.Each, "7"), (PlanForm.Eaters, "2"), (PlanForm.Serving, "1/2 cup"),
        (PlanForm.From, "2026-11-01"), (PlanForm.Until, "2027-04-15"), (PlanForm.Place, "Counter"), (PlanForm.Store, "Cellar"),
        (PlanForm.Room, "20 x 1 qt"), (PlanForm.Vessels, "1 qt, 2 x 10 l"), (PlanForm.Days, "Saturday,Sunday"), (PlanForm.Loss, "5 %"));

    [Fact]
    public void Read_FormThatIsRight_IsTheQuestionInOurUnits()
    {
        PlanQuestion question = Read(Right).Question!;
        Assert.Equal((14, 0.118294, 0.05), (question.ServingsAWeek, Math.Round(question.ServingLitres, 6), question.LossShare));
        Assert.Equal((20.0, 2.0), (question.Room.MeanCelsius, question.Room.SpreadCelsius));
        Assert.Equal([new Vessels(0.946352946, null), new Vessels(10, 2)], question.Vessels);
        Assert.Equal(new Vessels(0.946352946, 20), question.StoreHolds);
    }

    /// <summary>75 g of kraut with its brine are 75 ml; what is covered by water weighs less of the cup.</summary>
    [Theory]
    [InlineData("cabbage", "75 g", 0.075)]
    [InlineData("cucumber", "75 g", 0.125)]
    [InlineData("cabbage", "120", 0.120)]
    public void Read_ServingByMass_IsItsRoomAtTheTable(string what, string serving, double litres) =>
        Assert.Equal(litres, Read(Right.With((PlanForm.What, what), (PlanForm.Serving, serving))).Question!.ServingLitres, 1e-9);

    [Fact]
    public void Read_TemperatureTyped_GoesBeforeWhatIsMeasuredAndSaid()
    {
        var measured = new Dictionary<Guid, double> { [Make.Counter.Id] = 18.2 };
        Assert.Equal(18.2, Read(Right, measured).Question!.Room.MeanCelsius);
        Assert.Equal(19, Read(Right.With((PlanForm.Temperature, "19 C")), measured).Question!.Room.MeanCelsius);
    }

    public static TheoryData<string, string> Wrong => new()
    {
        { "servings", "0" }, { "servings", "many" }, { "servings", "1,500" }, { "serving", "5 gal" }, { "serving", "-1 cup" }, { "eaters", "0" },
        { "salt", "1 %" }, { "salt", "25 %" }, { "loss", "80 %" }, { "from", "2026-08-14" }, { "from", "first of May" }, { "until", "2026-10-31" },
        { "until", "2027-11-15" }, { "what", "beef" }, { "what", "" }, { "place", "attic" }, { "store", "" }, { "room", "1 qt" },
        { "room", "20 x 1 qt, 3 x 2 l" }, { "vessels", "20 x 5 kg" }, { "a day", "0" }, { "days", "Caturday" },
            { "days", "" }, { "temperature", "90 C" },
        { "sour", "9" }, { "away until", "2026-10-02" }, { "warm by", "40 C" }, { "power out", "30" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Read_FieldThatCannotBe_IsRefusedAlone(string field, string typed)
    {
        PlanForm form = Right.With((PlanForm.WarmMonth, "10"), (PlanForm.AwayFrom, "2026-10-03"), (PlanForm.AwayUntil, "2026-10-11"),
            (PlanForm.WarmBy, "3 C"))
            .With((PlanForm.Fields.First(each => each.InWords == field), typed));
        (PlanQuestion? question, IReadOnlyList<Refusal> refusals) = Read(form);
        Assert.Null(question);
        Assert.Equal(field, Assert.Single(refusals).Field);
    }

    [Fact]
    public void Read_SeveralWrongFields_AreToldAtOnce() => Assert.Equal(["until", "serving", "servings", "vessels"],
        Read(Right.With((PlanForm.Until, "2020-01-01"), (PlanForm.Serving, "5 gal"), (PlanForm.Each, "-3"), (PlanForm.Vessels, "five")))
            .Refusals.Select(refusal => refusal.Field));

    [Fact]
    public void ToQuery_FormAndBack_IsTheSame()
    {
        var words = System.Web.HttpUtility.ParseQueryString(Right.ToQuery());
        PlanForm back = PlanForm.Of(name => words[name]);
        Assert.All(PlanForm.Fields, field => Assert.Equal(Right[field], back[field]));
    }

    private static (PlanQuestion? Question, IReadOnlyList<Refusal> Refusals) Read(PlanForm form, Dictionary<Guid, double>? measured = null)
    {
        Household household = Make.Household();
        return new PlanReading(household, [Make.Counter, Make.Cellar], measured ?? [], Today).Read(form);
    }
}
