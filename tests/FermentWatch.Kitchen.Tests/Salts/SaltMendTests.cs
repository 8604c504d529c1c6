using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Salts;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Salts;

/// <summary>What a jar of 800 g of cabbage that was to have 2.25 % needs when it was salted otherwise.</summary>
public class SaltMendTests
{
    private static readonly Place Fridge = new() { Id = Guid.NewGuid(), Name = "Fridge", Typical = TypicalTemperature.ColdStore };

    [Fact]
    public void For_ForgottenSalt_IsAllOfItDryOrAsBrineWhoseWaterIsSaltedToo()
    {
        SaltMend mend = Mend(new MendForm { Happened = "forgotten" }, hours: 3);
        Assert.Equal(18, mend.Adding!.SaltGrams, 9);
        Assert.Equal(0.2, mend.Adding.BrineSaltGrams / mend.Adding.BrineGrams, 9);
        Assert.Equal(2.25, mend.Adding.BrineSaltGrams / (800 + mend.Adding.BrineWaterGrams) * 100, 9);
        Assert.Null(mend.Taking);
        Assert.Equal(SaltLateness.InTime, mend.Lateness);
    }

    [Theory]
    [InlineData("10 g", 1.25)]
    [InlineData("1.25 %", 1.25)]
    [InlineData("1,25", 1.25)]
    public void For_TooLittle_IsWhatIsLacking(string wentIn, double percent)
    {
        SaltMend mend = Mend(new MendForm { Happened = "too little", WentIn = wentIn });
        Assert.Equal(percent, mend.NowPercent!.Value, 9);
        Assert.Equal(8, mend.Adding!.SaltGrams, 9);
    }

    /// <summary>Each time brine is poured off after it has evened out, and water put in its place.</summary>
    [Theory]
    [InlineData("32 g", Cut.Shredded, 0)]
    [InlineData("60 g", Cut.Pieces, 0.4)]
    [InlineData("5 %", Cut.Whole, 0.6)]
    public void For_TooMuch_ReplacedAsOftenAsIsSaid_ComesBackToWhatWasMeant(string wentIn, Cut cut, double waterKilograms)
    {
        Jar jar = Jar(cut, waterKilograms);
        SaltMend mend = Mend(new MendForm { Happened = "TooMuch", WentIn = wentIn }, jar);
        Contents contents = Contents.Of(jar);
        double salt = contents.SaltGrams(mend.NowPercent!.Value);
        for (int time = 0; time < mend.Taking!.Times; time++)
            salt -= mend.Taking.BrineOutGrams * salt / (salt + contents.WaterGrams);
        Assert.Equal(2.25, salt / (10 * contents.SaltedKilograms), 0.05);
        Assert.InRange(mend.Taking.BrineOutGrams, 1, contents.LooseBrineGrams / 2);
        Assert.True(mend.Taking.WaterInGrams < mend.Taking.BrineOutGrams);
    }

    [Fact]
    public void For_TooMuch_OrUnsaltedVegetablesThatFitOrDoNot()
    {
        SaltMend mend = Mend(new MendForm { Happened = "TooMuch", WentIn = "32 g" });
        Assert.Equal(32 / 22.5 * 1000 - 800, mend.Taking!.VegetablesGrams, 6);
        Assert.False(mend.Taking.VegetablesFit);
        Jar roomy = Jar();
        roomy.VesselLitres = 2;
        Assert.True(Mend(new MendForm { Happened = "TooMuch", WentIn = "32 g" }, roomy).Taking!.VegetablesFit);
    }

    /// <summary>Brine of whole vegetables without water would have to be replaced a hundred times.</summary>
    [Fact]
    public void For_TooMuchWhereNoBrineIsLoose_OffersVegetablesAlone() =>
        Assert.Null(Mend(new MendForm { Happened = "TooMuch", WentIn = "8 %" }, Jar(Cut.Whole)).Taking!.Times);

    [Theory]
    [InlineData("cabbage", "2 %", true)]
    [InlineData("cabbage", "3 %", true)]
    [InlineData("cabbage", "1.99 %", false)]
    [InlineData("cabbage", "3.01 %", false)]
    [InlineData("napa", "5 %", true)]
    [InlineData("carrot", "1.75 %", true)]
    [InlineData("carrot", "2.75 %", true)]
    [InlineData("carrot", "1.7 %", false)]
    public void For_WithinWhatIsPublishedOrHalfAPoint_NothingNeedBeDone(string produce, string wentIn, bool within)
    {
        Jar jar = Jar();
        jar.Portions = [new Portion(produce, 0.8)];
        double percent = double.Parse(wentIn[..^2], System.Globalization.CultureInfo.InvariantCulture);
        SaltMend mend = Mend(new MendForm { Happened = percent < 2.25 ? "TooLittle" : "TooMuch", WentIn = wentIn }, jar);
        Assert.Equal(within, mend.IsWithin);
        Assert.Equal(within, mend.Adding is null && mend.Taking is null);
    }

    /// <summary>A litre holds 1.33 kg: the bound of what is put up unasked.</summary>
    [Theory]
    [InlineData(1.22, true)]
    [InlineData(1.28, false)]
    public void For_BrineToPourOn_SaysWhereTheVesselHasNoRoomForIt(double kilograms, bool fits)
    {
        Jar jar = Jar();
        jar.Portions = [new Portion("cabbage", kilograms)];
        SaltMend mend = Mend(new MendForm { Happened = "TooLittle", WentIn = "1 %" }, jar);
        Assert.Equal(fits, mend.Adding!.BrineFits);
        Assert.Equal(fits, kilograms + (mend.Adding.BrineGrams / 1000) <= 1.33);
        Assert.Equal(!fits, Words(mend).Steps().ElementAt(1).Contains("more than goes into the vessel", StringComparison.Ordinal));
    }

    /// <summary>What was meant stands on record already: only water or vegetables that came along are to be put on it.</summary>
    [Fact]
    public void Records_WhereTheRecordSaysWhatWasMeant_SayThatItStands()
    {
        Assert.Equal([true, false, false], Stand("TooLittle", "10 g"));
        Assert.Equal([true, false, false], Stand("TooMuch", "40 g"));

        static IEnumerable<bool> Stand(string happened, string wentIn) =>
            MendedRecord.Of(Jar(), Mend(new MendForm { Happened = happened, WentIn = wentIn }), Make.Household()).Select(record => record.Stands);
    }

    /// <summary>Kraut has 2 % at the least (FDA CPG 585.750), whatever was meant.</summary>
    [Fact]
    public void For_IntendedBelowTheVegetablesLeast_IsBroughtToTheLeast()
    {
        SaltMend mend = Mend(new MendForm { Happened = "TooMuch", WentIn = "5 %", Intended = "1.5 %" });
        Assert.Equal(2, mend.WantedPercent);
        Assert.Equal(2, mend.Range.LowestPercent);
    }

    [Theory]
    [InlineData(24, "Counter", "Forgotten", null, SaltLateness.InTime)]
    [InlineData(25, "Counter", "Forgotten", null, SaltLateness.ThrowOut)]
    [InlineData(25, "Fridge", "Forgotten", null, SaltLateness.LateInTheCold)]
    [InlineData(25, "Counter", "TooLittle", "0.7 %", SaltLateness.ThrowOut)]
    [InlineData(25, "Counter", "TooLittle", "0.8 %", SaltLateness.Late)]
    [InlineData(300, "Counter", "TooLittle", "1.5 %", SaltLateness.InTime)]
    [InlineData(300, "Counter", "TooMuch", "9 %", SaltLateness.InTime)]
    public void For_HoursAfterPacking_IsLateOrNot(double hours, string place, string happened, string? wentIn, SaltLateness lateness)
    {
        SaltMend mend = Mend(new MendForm { Happened = happened, WentIn = wentIn }, hours: hours, place: place == "Fridge" ? Fridge : Make.Counter);
        Assert.Equal(lateness, mend.Lateness);
    }

    [Fact]
    public void For_ForgottenForMoreThanADay_SaysThrowOutAndNoAmount()
    {
        SaltMend mend = Mend(new MendForm { Happened = "Forgotten" }, hours: 30);
        Assert.Null(mend.Adding);
        MendWords words = Words(mend, hours: 30);
        Assert.StartsWith("Throw it out", words.Headline, StringComparison.Ordinal);
        Assert.Empty(words.Steps());
        Assert.Contains(words.Meaning(), meaning => meaning.EndsWith("Common practice, no source.", StringComparison.Ordinal));
        Assert.DoesNotContain(MendedRecord.Of(Jar(), mend, Make.Household()), record => record.Form.Salt == "2.25 %");
    }

    [Fact]
    public void For_TastesTooSaltyAndNobodyKnows_WaitsAndTellsWhatEachPercentWouldNeed()
    {
        SaltMend mend = Mend(new MendForm { Happened = "TastesTooSalty" });
        Assert.Null(mend.NowPercent);
        Assert.Equal([4.0, 5, 6, 7, 8], mend.IfItWere.Select(each => each.Percent));
        Assert.StartsWith("Wait until 2 October 2026 01:29", Words(mend).Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, null, null, "happened")]
    [InlineData("sideways", null, null, "happened")]
    [InlineData("Forgotten", "3 g", null, "went in")]
    [InlineData("TooLittle", null, null, "went in")]
    [InlineData("TooLittle", "30 %", null, "went in")]
    [InlineData("TooLittle", "-3 g", null, "went in")]
    [InlineData("TooLittle", "3 %", null, "intended")]
    [InlineData("TooMuch", "1 %", null, "intended")]
    [InlineData("TooMuch", "4 %", "9 %", "intended")]
    [InlineData("TooMuch", "4 %", "NaN", "intended")]
    public void Read_WhatCannotBe_NamesTheField(string? happened, string? wentIn, string? intended, string field)
    {
        (MendQuestion? question, IReadOnlyList<Refusal> refusals) = MendQuestion.Read(
            new MendForm { Happened = happened, WentIn = wentIn, Intended = intended }, Jar(), Make.Household());
        Assert.Null(question);
        Assert.Contains(refusals, refusal => refusal.Field == field);
    }

    /// <summary>The figures lead to a correction that the record takes, after which the jar has what was meant.</summary>
    [Theory]
    [InlineData("Forgotten", null, 3)]
    [InlineData("TooLittle", "10 g", 3)]
    [InlineData("TooMuch", "40 g", 3)]
    public void Records_EachWay_AreTakenAsACorrection(string happened, string? wentIn, double hours)
    {
        Jar jar = Jar();
        (jar.Salting, jar.VesselLitres) = (new Salting(SaltKnowledge.Weighed, 4.5), 2);
        SaltMend mend = Mend(new MendForm { Happened = happened, WentIn = wentIn, Intended = "2.25 %" }, jar, hours);
        foreach (MendedRecord record in MendedRecord.Of(jar, mend, Make.Household()).Where(record => record.Form.Salt == "2.25 %"))
        {
            CorrectionOrder order = new JarCorrecting(Make.Household(), [Make.Counter, Make.Cellar], At(hours), "Mira").Read(jar, record.Form);
            Assert.Empty(order.Refusals);
            Assert.Equal(2.25, order.Corrected!.Salting.Percent);
        }
    }

    [Fact]
    public void Words_NeverCallAnythingSafe()
    {
        foreach (MendForm form in new MendForm[]
        {
            new() { Happened = "Forgotten" }, new() { Happened = "TooLittle", WentIn = "10 g" }, new() { Happened = "TooMuch", WentIn = "80 g" },
            new() { Happened = "TastesTooSalty" }, new() { Happened = "TooLittle", WentIn = "2.1 %" },
        })
            foreach (double hours in new[] { 2.0, 40 })
            {
                MendWords words = Words(Mend(form, hours: hours), hours);
                string all = string.Join(' ', [words.Headline, words.Standing, .. words.Steps(), .. words.Meaning(), MendWords.SaysNothingElse]);
                Assert.DoesNotContain(" safe ", all.Replace("food-safety", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
            }
    }

    private static Instant At(double hours) => Make.Packed + Duration.FromHours(hours);

    private static MendWords Words(SaltMend mend, double hours = 2) => new(mend, Make.Household(), At(hours));

    private static Jar Jar(Cut cut = Cut.Shredded, double waterKilograms = 0)
    {
        Jar jar = Make.Jar(1);
        (jar.Cut, jar.AddedWaterKilograms) = (cut, waterKilograms);
        return jar;
    }

    private static SaltMend Mend(MendForm form, Jar? jar = null, double hours = 2, Place? place = null)
    {
        Household household = Make.Household();
        (MendQuestion? question, IReadOnlyList<Refusal> refusals) = MendQuestion.Read(form, jar ?? Jar(), household);
        Assert.Empty(refusals);
        return SaltMend.For(jar ?? Jar(), question!, place ?? Make.Counter, At(hours));
    }
}
