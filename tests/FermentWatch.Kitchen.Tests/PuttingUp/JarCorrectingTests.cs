using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

public class JarCorrectingTests
{
    private static readonly Instant Now = Make.Packed + Duration.FromDays(3);

    [Theory]
    [InlineData("what", "red cabbage", "vegetables: cabbage 800 g -> red cabbage 800 g")]
    [InlineData("how much", "900 g", "vegetables: cabbage 800 g -> cabbage 900 g")]
    [InlineData("also", "carrot 0,1 kg", "vegetables: cabbage 800 g -> cabbage 800 g, carrot 100 g")]
    [InlineData("salt", "2", "salt: 2.25 %, weighed -> 2 %, weighed")]
    [InlineData("salt", "by taste", "salt: 2.25 %, weighed -> by taste")]
    [InlineData("water", "200 g", "added water: 0 g -> 200 g")]
    [InlineData("vessel", "1.5 l", "vessel: 1 l -> 1.5 l")]
    [InlineData("cut", "Sliced", "cut: shredded -> sliced")]
    [InlineData("name", "the last heads", "name: cabbage -> the last heads")]
    [InlineData("packed", "2026-09-30T18:00", "packed on: 1 October 2026 18:00 -> 30 September 2026 18:00")]
    [InlineData("place", "Cellar", "first place: Counter -> Cellar")]
    [InlineData("cover", "Weight", "cover: under a leaf -> under a weight")]
    [InlineData("lid", "Tight", "lid: vented lid -> tight lid")]
    [InlineData("sour", "VerySour", "how sour: sour -> very sour")]
    public void Read_OneFieldChanged_KeepsWhatStoodBeforeAndLeavesTheRest(string field, string typed, string correction)
    {
        Jar jar = Make.Jar(1);
        CorrectionOrder order = Read(jar, With(field, typed));
        Assert.Empty(order.Refusals);
        Assert.Empty(order.Doubts);
        JarCorrection filed = Assert.Single(order.Corrections);
        Assert.Equal(correction, $"{filed.Field}: {filed.Before} -> {filed.After}");
        Assert.Equal(field is "cover" or "lid" or "sour" ? Now : null, filed.Since);
        Assert.Equal((jar.Id, jar.BatchId, jar.Number), (order.Corrected!.Id, order.Corrected.BatchId, order.Corrected.Number));
    }

    [Fact]
    public void Read_NothingChangedOrOnlyShownRounded_IsNoCorrection()
    {
        Jar jar = Make.Jar(1);
        jar.Portions = [new Portion("cabbage", 0.908 * 0.8 / 3)];
        PutUpForm shown = JarAsForm.Of(jar, Make.Household(), [Make.Counter, Make.Cellar]);
        CorrectionOrder order =
            Read(jar, new CorrectionForm { HowMuch = shown.HowMuch, Salt = shown.Salt, Vessel = shown.Vessel, PackedAt = shown.PackedAt });
        Assert.Empty(order.Corrections);
        Assert.Same(jar, order.Corrected);
    }

    [Fact]
    public void Read_PackedAfterSomethingWasEntered_IsRefused()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(
            new Look { Id = Guid.NewGuid(), JarId = jar.Id, At = Make.Packed + Duration.FromDays(1), EnteredAt = Now, By = "Mira", Opened = false });
        CorrectionOrder order = Read(jar, new CorrectionForm { PackedAt = "2026-10-03T12:00" });
        Assert.Null(order.Corrected);
        Assert.Equal(("packed on", "a time up to 2 October 2026 18:00, when something was entered of it, would be right"),
            (Assert.Single(order.Refusals).Field, order.Refusals[0].WouldBeRight));
    }

    [Fact]
    public void Read_OddFigure_IsAskedAboutAsWhenItIsPutUp()
    {
        CorrectionOrder order = Read(Make.Jar(1), new CorrectionForm { HowMuch = "2 kg" });
        Assert.Null(order.Corrected);
        Assert.Equal("how much", Assert.Single(order.Doubts).Field);
        Assert.Equal(2, Read(Make.Jar(1), new CorrectionForm { HowMuch = "2 kg", ItIsRight = true }).Corrected!.Portions[0].MassKilograms);
    }

    /// <summary>That it was packed long ago and is hardly filled was asked about when it was put up.</summary>
    [Fact]
    public void Read_JarThatIsOddAlready_AsksOnlyAboutWhatBecomesOdd()
    {
        Jar jar = Make.Jar(1, packedAt: Now - Duration.FromDays(382));
        jar.VesselLitres = 10;
        CorrectionOrder mended = Read(jar, new CorrectionForm { Salt = "2.5 %" });
        Assert.Empty(mended.Doubts);
        Assert.Equal(2.5, mended.Corrected!.Salting.Percent);
        CorrectionOrder odd = Read(jar, new CorrectionForm { Salt = "1.25 %", PackedAt = "2025-09-18T18:00" });
        Assert.Null(odd.Corrected);
        Assert.Equal(["packed on", "salt"], odd.Doubts.Select(doubt => doubt.Field).Order());
    }

    private static CorrectionForm With(string field, string typed) => field switch
    {
        "what" => new() { What = typed },
        "how much" => new() { HowMuch = typed },
        "also" => new() { Also = typed },
        "salt" => new() { Salt = typed },
        "water" => new() { AddedWater = typed },
        "vessel" => new() { Vessel = typed },
        "cut" => new() { Cut = typed },
        "name" => new() { Name = typed },
        "packed" => new() { PackedAt = typed },
        "place" => new() { Place = typed },
        "cover" => new() { Cover = typed },
        "lid" => new() { Lid = typed },
        _ => new() { Target = typed },
    };

    private static CorrectionOrder Read(Jar jar, CorrectionForm form) =>
        new JarCorrecting(Make.Household(), [Make.Counter, Make.Cellar], Now, "Mira").Read(jar, form);
}
