using System.Net;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Words;
using FermentWatch.Web.Accounts;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Service.Tests.Doors;

/// <summary>The way in on a phone, and names and spoons as people say them.</summary>
public class WayInTests
{
    [Fact]
    public void AnsweringAddresses_ListeningEverywhere_AreThoseOfTheHomeNetworkFirst()
    {
        IPAddress[] own = [IPAddress.Loopback, IPAddress.Parse("192.168.7.20"), IPAddress.Parse("fd00::20")];
        Assert.Equal(["http://192.168.7.20:8340/", "http://[fd00::20]:8340/", "http://127.0.0.1:8340/"],
            AnsweringAddresses.Of(["http://0.0.0.0:8340"], own).Select(address => address.ToString()));
        Assert.Equal(["http://127.0.0.1:8340/"], AnsweringAddresses.Of(["http://127.0.0.1:8340"], own).Select(address => address.ToString()));
    }

    [Fact]
    public void QrCode_OfAnAddress_IsLinesOfHalfBlocksAlikeLong()
    {
        string[] lines = SetUpNotice.QrCode("http://192.168.7.20:8340/set-up/0123456789abcdef0123")
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        Assert.InRange(lines.Length, 14, 30);
        Assert.True(lines.Max(line => line.Length) >= 33, "a QR code of version 4 is 33 modules wide");
        Assert.DoesNotContain(string.Concat(lines), sign => !" █▀▄".Contains(sign, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Europe/Vienna", "Europe/Vienna")]
    [InlineData("W. Europe Standard Time", "Europe/Berlin")]
    [InlineData("Kitchen/Corner", null)]
    public void MachineZone_ByWhateverNameTheMachineHasIt_IsOneOfTheTzDatabase(string machine, string? zone)
    {
        var clock = new FakeTimeProvider();
        clock.SetLocalTimeZone(TimeZoneInfo.CreateCustomTimeZone(machine, TimeSpan.FromHours(1), machine, machine));
        Assert.Equal(zone, MachineZone.Of(clock)?.Id);
    }

    [Theory]
    [InlineData("Küche", "kueche")]
    [InlineData("Crème brûlée", "creme-brulee")]
    [InlineData("Straße 9", "strasse-9")]
    [InlineData("Łódź", "lodz")]
    [InlineData("cellar shelf", "cellar-shelf")]
    [InlineData("地下室", null)]
    public void Slug_OfAName_KeepsItsLetters(string name, string? slug) => Assert.Equal(slug, SlugOf.Name(name));

    [Theory]
    [InlineData(3.32, "3 1/4 tablespoons")]
    [InlineData(1.0, "1 tablespoon")]
    [InlineData(0.9, "1 tablespoon")]
    [InlineData(1.55, "1 1/2 tablespoons")]
    [InlineData(0.41, "1 1/4 teaspoons")]
    [InlineData(0.33, "1 teaspoon")]
    [InlineData(0.02, "1/4 teaspoon")]
    public void Spoons_AreRoundedAsSpoonsAre(double tablespoons, string words) => Assert.Equal(words, SpoonWords.Of(tablespoons));
}
