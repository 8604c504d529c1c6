using System.Globalization;

namespace FermentWatch.Service.Tests.CommandLine;

/// <summary><c>salt</c> against published and worked rows. Their sources stand beside each.</summary>
public class SaltTests
{
    /// <summary>
    /// 3 tablespoons in 5 lb of cabbage (USDA Complete Guide to Home Canning, Guide 6, 2015): the same words mean 1.8 to 2.8 %.
    /// Tablespoons: 13.75 g (University of Wisconsin Extension, 7-3/4 oz a cup), 21.3 g (a kitchen weighing, 3/4 oz);
    /// 17.0 g (University of Minnesota Extension: 3 tablespoons in 5 lb is 2.25 %); 18.0 g (USDA SR 02047).
    /// </summary>
    [Theory]
    [InlineData("canning", "1.82", "2.38", "2.82")]
    [InlineData("table", "2.25", "2.38", "2.51")]
    public async Task Salt_ThreeTablespoonsInFivePounds_GivesTheWorkedRange(string kind, string low, string typical, string high)
    {
        Dictionary<string, string> row = await Row("--produce-mass", "5lb", "--salt", "3tbsp", "--salt-kind", kind);
        Assert.Equal((low, typical, high), (row["percent_low"], row["percent_typical"], row["percent_high"]));
    }

    /// <summary>3/4 cup of canning salt in 25 lb (USDA Guide 6, 2015), at 292 g a cup (USDA SR 02047; the cup from memory): 1.93 %.</summary>
    [Fact]
    public async Task Salt_ThreeQuartersOfACupInTwentyFivePounds_IsOnePointNineThreePercent()
    {
        Dictionary<string, string> row = await Row("--produce-mass", "25lb", "--salt", "0.75cup");
        Assert.Equal("1.93", row["percent_typical"]);
    }

    /// <summary>Top-up brine, 1.5 tablespoons in a US quart of water (USDA Guide 6, 2015; NDSU Extension), at 18 g a tablespoon (USDA SR
    /// 02047): 2.78 % by mass.</summary>
    [Fact]
    public async Task Salt_TopUpBrine_IsTwoPointSevenEightPercentByMass()
    {
        Dictionary<string, string> row = await Row("--water", "1qt", "--salt", "1.5tbsp");
        Assert.Equal("2.78", row["brine_percent_by_mass_typical"]);
    }

    /// <summary>
    /// Dill brine, 1/2 cup of salt in 8 cups of water and 1/4 cup of vinegar on 4 lb of cucumbers (USDA Guide 6, 2015), at
    /// 146 g the half cup: 6.97 % by mass, evening out at 3.73 %.
    /// </summary>
    [Fact]
    public async Task Salt_DillBrine_EvensOutFromNearlySevenToUnderFourPercent()
    {
        Dictionary<string, string> row = await Row("--produce-mass", "4lb", "--water", "8cups", "--vinegar", "0.25cup", "--salt", "0.5cup");
        Assert.Equal("146.0", row["salt_g_typical"]);
        Assert.Equal("6.97", row["brine_percent_by_mass_typical"]);
        Assert.Equal("3.73", row["evens_out_percent_by_mass"]);
    }

    /// <summary>
    /// Sodium chloride solutions at 20 C: grams and moles a litre, and density. Poradnik fizykochemiczny 1974
    /// (physico-chemical handbook), NaCl table; the row at 2 % with the density its own 20.250 g/L gives, 1012.5.
    /// </summary>
    [Theory]
    [InlineData(1, 10.053, 0.1720, 1005.3)]
    [InlineData(2, 20.250, 0.3464, 1012.5)]
    [InlineData(4, 41.072, 0.7026, 1026.8)]
    [InlineData(6, 62.478, 1.0688, 1041.3)]
    [InlineData(8, 84.472, 1.4451, 1055.9)]
    [InlineData(10, 107.070, 1.8317, 1070.7)]
    [InlineData(12, 130.284, 2.2288, 1085.7)]
    [InlineData(14, 154.128, 2.6367, 1100.9)]
    [InlineData(16, 178.592, 3.0553, 1116.2)]
    [InlineData(18, 203.742, 3.4855, 1131.9)]
    [InlineData(20, 229.560, 3.9272, 1147.8)]
    [InlineData(22, 256.080, 4.3808, 1164.0)]
    [InlineData(24, 283.296, 4.8465, 1180.4)]
    [InlineData(26, 311.272, 5.3251, 1197.2)]
    // CRC Handbook, from memory.
    [InlineData(3, 30.589, 0.5234, 1019.6)]
    [InlineData(5, 51.700, 0.8846, 1034.0)]
    public async Task Salt_BrineOfAPercent_HoldsWhatTheHandbookSays(double percent, double grams, double moles, double density)
    {
        Dictionary<string, string> row = await Row("--brine", percent.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(grams, Number(row["brine_g_per_litre"]), grams * 5e-4 + 0.05);
        Assert.Equal(moles, Number(row["brine_mol_per_litre"]), moles * 5e-4 + 0.0005);
        Assert.Equal(density, Number(row["brine_density_kg_m3"]), 0.11);
    }

    [Fact]
    public async Task Salt_ProduceAndPercent_SaysGramsSpoonsWhyAndCautions()
    {
        Call call = await Call.Of("salt", "--produce-mass", "2.3kg", "--percent", "2.25%", "--water", "500g", "--salt-kind", "table");
        Assert.Equal(0, call.ExitCode);
        const string TopUp = "Use 1.5 tablespoons of salt in a quart (28 g in a litre) of boiled and cooled water.";
        Assert.Equal(
            $"""
            salt              63.0 g, 2.25 % of vegetables and liquid, 2.8 kg
            by the spoon      3 1/4 tablespoons to 3 3/4 tablespoons of table salt, about 3 1/2 tablespoons
            why a range       a tablespoon of table salt is published or was weighed as 17 to 19 g; weigh it if you can
            brine to pour on  11.19 % by mass, with all the salt in the liquid
            evens out at      2.20 % by mass of everything in the jar
            Caution: Never top up with plain water: it thins the salt. {TopUp}
            Caution: Ferments are salty: on a salt-restricted diet, ask first.
            Caution: Your local food-safety guidance comes first. When in doubt, throw it out.

            """, call.Output);
    }

    [Fact]
    public async Task Salt_Json_HoldsTheSameFigures()
    {
        Call call = await Call.Of("salt", "--produce-mass", "1kg", "--percent", "2%", "--json");
        Assert.Equal(
            """{"salt_g":20,"tablespoons_low":1.052632,"tablespoons_typical":1.111111,"tablespoons_high":1.176471,"""
            + "\"evens_out_percent_by_mass\":1.960784}",
            call.Output.Trim());
    }

    [Theory]
    [InlineData("--produce-mass 2kg --percent 225%", "percent: 225% cannot be used. Enter 1.5 to 8 % of vegetables and added water together (less "
        + "lets the wrong germs keep up, more stops the lactic acid bacteria), such as 2.25%.")]
    [InlineData("--produce-mass -2kg --percent 2%",
        "produce-mass: -2kg cannot be used. Enter a mass from 1 g to 250 kg, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("--produce-mass 2 --percent 2%",
        "produce-mass: 2 cannot be used. Enter a mass from 1 g to 250 kg, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("--produce-mass 2kg --percent 2% --salt-kind sea", "salt-kind: sea cannot be used. Choose one of table, canning, pickling, flake.")]
    [InlineData("--produce-mass 2kg",
        "what is asked: Choose one of --percent 2.25% (how much salt), --salt 3tbsp (how many per cent) or --brine 5% (a brine alone).")]
    [InlineData("--percent 2%", "produce-mass: Enter produce-mass, such as 2.3kg or 5lb; for a brine alone ask --brine 5%.")]
    [InlineData("--salt 3tbsp", "produce-mass: Enter produce-mass, such as 2.3kg or 5lb, or --water for a brine alone.")]
    [InlineData("--brine 27% --water 1l", "brine: 27% cannot be used. Enter 0.5 to 26 % by mass, such as 2.25%.")]
    [InlineData("--produce-mass 2kg --salt NaNg",
        "salt: NaNg cannot be used. Enter a mass such as 54g or 2oz, or spoons such as 3tbsp, 2tsp or 0.75cup.")]
    public async Task Salt_ImpossibleValue_ExitsTwoWithOneLine(string args, string line)
    {
        Call call = await Call.Of(["salt", .. args.Split(' ')]);
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        Assert.Equal(line, Assert.Single(call.ErrorLines));
    }

    private static async Task<Dictionary<string, string>> Row(params string[] args)
    {
        Call call = await Call.Of(["salt", .. args, "--csv"]);
        Assert.Equal((0, ""), (call.ExitCode, call.Error));
        Assert.Equal(2, call.Lines.Length);
        return call.Lines[0].Split(',').Zip(call.Lines[1].Split(',')).ToDictionary(pair => pair.First, pair => pair.Second);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
