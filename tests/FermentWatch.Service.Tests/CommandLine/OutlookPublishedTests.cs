using System.Globalization;

namespace FermentWatch.Service.Tests.CommandLine;

/// <summary>The outlook of cabbage at 2.25 % salt against published acidity. The source of each stands beside it.</summary>
public class OutlookPublishedTests
{
    /// <summary>
    /// 18 C, day 20: 1.7 to 2.3 % lactic published (Pederson &amp; Albury 1969, The Sauerkraut Fermentation, New York State
    /// Agricultural Experiment Station Bulletin 824 as told in Steinkraus 1992 and FAO Agricultural Services
    /// Bulletin 134, 1998), widened by a tenth to 1.5 to 2.4.
    /// 7.5 C, day 10: about 0.4 % (the same), taken as 0.3 to 0.55.
    /// 21 C, day 7, when a first taste is due (common practice, no source): 0.7 to 1.4.
    /// </summary>
    [Theory]
    [InlineData("18C", "20", 1.5, 2.4)]
    [InlineData("7.5C", "10", 0.3, 0.55)]
    [InlineData("21C", "7", 0.7, 1.4)]
    public async Task Outlook_CabbageAtAConstantTemperature_ReachesThePublishedAcidity(string temperature, string days, double low, double high)
    {
        Call call = await Call.Of("outlook", "--produce", "cabbage", "--salt", "2.25%", "--temperature", temperature, "--days", "30", "--csv");
        string[] row = call.Lines.Select(line => line.Split(',')).Single(cells => cells[0] == days);
        Assert.InRange(double.Parse(row[6], CultureInfo.InvariantCulture), low, high);
    }
}
