using FermentWatch.Notices.Mail;

namespace FermentWatch.Notices.Tests.Mail;

public sealed class MailOptionsTests
{
    [Fact]
    public void Defaults_SendNothingAndHaveNothingWrong()
    {
        var options = new MailOptions();
        Assert.Equal((null, 587, MailTls.StartTls, TimeSpan.FromSeconds(30)), (options.Host, options.Port, options.Tls, options.Timeout));
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void Errors_EverythingWrong_SaysAllOfIt() => Assert.Equal(
        [
            "Port is 0; a number from 1 to 65535 belongs here.",
            "Timeout is 00:10:00; a time from 00:00:05 to 00:01:30 belongs here.",
            "Host is 'mail server'; the name or address of a mail server belongs here, without a port.",
            "From is 'the kitchen'; a mail address belongs here, like kitchen@example.org.",
            "CertificateFile is '/nowhere.pem', where there is no file; a PEM file belongs here.",
            "User and Password go together; one of them is set and the other is not.",
        ],
        new MailOptions { Port = 0, Timeout = TimeSpan.FromMinutes(10), Host = "mail server", From = "the kitchen", CertificateFile = "/nowhere.pem",
        User = "ada" }.Errors());

    [Fact]
    public void Errors_ServerWithoutSender_AsksForOne() =>
        Assert.Equal(["From is not set and Host is 'mail.example.org'; the address letters come from belongs here."],
        new MailOptions { Host = "mail.example.org" }.Errors());

    [Theory]
    [InlineData("mira@example.org", true)]
    [InlineData("Mira <mira@example.org>", true)]
    [InlineData("mira@localhost", true)]
    [InlineData("mira", false)]
    [InlineData("mira@", false)]
    [InlineData("@example.org", false)]
    [InlineData("mira@exa mple.org", false)]
    [InlineData("mira@example.org, ada@example.org", false)]
    [InlineData("mira@example.org\r\nBcc: all@example.org", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void IsOne_Text_IsOneMailAddress(string? text, bool one) => Assert.Equal(one, MailAddress.IsOne(text));
}
