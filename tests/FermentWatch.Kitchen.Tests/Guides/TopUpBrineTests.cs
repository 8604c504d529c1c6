using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Guides;

/// <summary>
/// 1.5 tablespoons in a quart: USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015; NDSU Extension. 27 g in 0.946 l are 28 g in
/// a litre, rounded down; a jar of 5 % takes 50 / 0.95 = 52.6 g in a litre of water, rounded up.
/// </summary>
public class TopUpBrineTests
{
    [Theory]
    [InlineData(2.25, "28 g of salt in a litre", "1.5 tablespoons of salt in a quart")]
    [InlineData(3.0, "31 g of salt in a litre", "2 tablespoons of salt in a quart")]
    [InlineData(5.0, "53 g of salt in a litre", "3 tablespoons of salt in a quart")]
    [InlineData(null, "28 g of salt in a litre", "1.5 tablespoons of salt in a quart")]
    public void Words_AnyJar_AreThePublishedBrineOrAsSaltyAsTheJar(double? percent, string metric, string customary)
    {
        Jar jar = Make.Jar(1);
        jar.Salting = percent is null ? new Salting(SaltKnowledge.ByTaste, null) : new Salting(SaltKnowledge.Weighed, percent);
        Assert.Equal((metric, customary), (TopUpBrine.Words(jar, MassUnit.Kilogram), TopUpBrine.Words(jar, MassUnit.Pound)));
    }
}
