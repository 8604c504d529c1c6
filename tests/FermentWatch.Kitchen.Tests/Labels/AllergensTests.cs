using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Labels;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Labels;

/// <summary>Plants of Annex II of Regulation (EU) No 1169/2011 (2011).</summary>
public class AllergensTests
{
    [Theory]
    [InlineData("celery", "celery")]
    [InlineData("mustard seed", "mustard")]
    [InlineData("toasted Sesame", "sesame")]
    [InlineData("cabbage", null)]
    [InlineData("dill", null)]
    public void Of_OnePortion_IsNamedOnce(string produce, string? allergen)
    {
        Jar jar = Make.Jar(1);
        jar.Portions = [new Portion(produce, 0.8), new Portion(produce, 0.1)];
        Assert.Equal(allergen is null ? [] : [allergen], Allergens.Of(jar));
    }
}
