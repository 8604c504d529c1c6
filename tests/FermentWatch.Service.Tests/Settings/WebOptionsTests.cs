using FermentWatch.Web;


namespace FermentWatch.Service.Tests.Settings;

public class WebOptionsTests
{
    [Fact]
    public void Defaults_AreThisMachineOnly()
    {
        var options = new WebOptions();
        Assert.Equal(("127.0.0.1", 8340), (options.Address, options.Port));
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void Errors_WrongAddressAndPort_SayWhatBelongsThere() => Assert.Equal(
        [
            "Address is 'home'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0.",
            "Port is 65536; a number from 0 to 65535 belongs here.",
        ], new WebOptions { Address = "home", Port = 65_536 }.Errors());

    [Theory]
    [InlineData("127.0.0.1", "http://127.0.0.1:8340/")]
    [InlineData("0.0.0.0", "http://127.0.0.1:8340/")]
    [InlineData("::", "http://[::1]:8340/")]
    [InlineData("192.168.1.20", "http://192.168.1.20:8340/")]
    public void OwnUrl_OfAnAddress_IsReachableFromThisMachine(string address, string url) =>
        Assert.Equal(url, new WebOptions { Address = address }.OwnUrl().ToString());
}
