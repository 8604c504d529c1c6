using System.Security.Cryptography.X509Certificates;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Mail;
using FermentWatch.Notices.Tests.Doubles;
using MimeKit;
using NodaTime.Testing;

namespace FermentWatch.Notices.Tests.Mail;

/// <summary>Against a real SMTP server on loopback, and against one that misbehaves.</summary>
public sealed class MailChannelTests
{
    [Fact]
    public async Task SendAsync_Taken_CarriesTheWordsTwiceAndTheLinks()
    {
        await using PostOffice post = PostOffice.Open();
        Assert.Equal(DeliveryOutcome.Delivered, await SendAsync(Options(post.Port), asks: true));
        MimeMessage letter = Assert.Single(post.Letters);
        Assert.Equal("Sun 4 Oct: 3 jars, one minute", letter.Subject);
        Assert.Equal(("\"Number Nine\" <kitchen@example.org>", "\"Mira\" <mira@example.org>"), (letter.From.ToString(), letter.To.ToString()));
        Assert.Equal(Make.Now.ToDateTimeOffset(), letter.Date);
        Assert.Equal("auto-generated", letter.Headers["Auto-Submitted"]);
        Assert.Equal("multipart/alternative", letter.Body!.ContentType.MimeType);
        Assert.Equal(
            """
            Under brine? Küche 1, 2; cellar 5
            Open: 5

            All well: https://kitchen.example.org/answer/whole

            All well: Küche: https://kitchen.example.org/answer/11111111111111111111111111111111

            All well: cellar: https://kitchen.example.org/answer/22222222222222222222222222222222

            Something is wrong, or more to enter: https://kitchen.example.org/

            A link opens a page with two buttons, all well and later, and answers for Mira until the day is over. Do not pass it on.

            """, letter.TextBody, ignoreLineEndingDifferences: true);
        Assert.Contains("<p style=\"margin:0 0 8px\">Under brine? K&#252;che 1, 2; cellar 5</p><p style=\"margin:0 0 8px\">Open: 5</p>",
            letter.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("href=\"https://kitchen.example.org/answer/whole\">All well</a>", letter.HtmlBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SendAsync_Repeat_IsTheSameMessageAndAnotherNoticeIsNot()
    {
        await using PostOffice post = PostOffice.Open();
        await SendAsync(Options(post.Port));
        await SendAsync(Options(post.Port), late: "3 hours late");
        Assert.Equal(post.Letters[0].MessageId, post.Letters[1].MessageId);
        Assert.Matches("^[0-9a-f]{32}@example.org$", post.Letters[0].MessageId);
        Assert.Equal("Sun 4 Oct: 3 jars, one minute (3 hours late)", post.Letters[1].Subject);
        Assert.NotEqual(MailLetter.MessageId("round/2026-10-05/Mira", "example.org"), post.Letters[0].MessageId);
    }

    [Fact]
    public async Task SendAsync_NoAddressOfThePages_HasNoLinks()
    {
        await using PostOffice post = PostOffice.Open();
        await SendAsync(Options(post.Port), asks: true, root: null);
        MimeMessage letter = Assert.Single(post.Letters);
        Assert.Equal("Under brine? Küche 1, 2; cellar 5\nOpen: 5\n", letter.TextBody!.ReplaceLineEndings("\n"));
        Assert.DoesNotContain("href", letter.HtmlBody, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nobody@example.org", DeliveryResult.Refused, "knows no nobody@example.org: 550 no such box here")]
    [InlineData("busy@example.org", DeliveryResult.TryAgain, "does not take letters for busy@example.org just now: 452 the box is full")]
    public async Task SendAsync_ReceiverNotTaken_IsForGoodByFiveAndForNowByFour(string to, DeliveryResult result, string trouble)
    {
        await using PostOffice post = PostOffice.Open();
        DeliveryOutcome outcome = await SendAsync(Options(post.Port), to: to);
        Assert.Equal(result, outcome.Result);
        Assert.StartsWith($"localhost:{post.Port} {trouble}", outcome.Trouble, StringComparison.Ordinal);
        Assert.Empty(post.Letters);
    }

    [Theory]
    [InlineData("greeting", "421 come back later", DeliveryResult.TryAgain, "says: 421 come back later")]
    [InlineData("greeting", "554 not for you", DeliveryResult.TryAgain, "says: 554 not for you")]
    [InlineData("MAIL", "550 wrong sender", DeliveryResult.TryAgain, "does not take letters from Mail:From: 550 wrong sender")]
    [InlineData("RCPT", "450 grey for now", DeliveryResult.TryAgain, "does not take letters for mira@example.org just now: 450 grey for now")]
    [InlineData("RCPT", "551 moved away", DeliveryResult.Refused, "knows no mira@example.org: 551 moved away")]
    [InlineData("body", "451 disk trouble", DeliveryResult.TryAgain, "says: 451 disk trouble")]
    [InlineData("body", "554 looks like spam", DeliveryResult.Refused, "does not take the letter: 554 looks like spam")]
    public async Task SendAsync_ServerThatRefuses_IsAnOutcomeWithItsWords(string step, string says, DeliveryResult result, string trouble)
    {
        await using var post = new ScriptedPost(new Dictionary<string, string?> { [step] = says });
        Assert.Equal(new DeliveryOutcome(result, $"localhost:{post.Port} {trouble}"), await SendAsync(Options(post.Port)));
    }

    [Theory]
    [InlineData("greeting")]
    [InlineData("RCPT")]
    [InlineData("body")]
    public async Task SendAsync_ServerThatHangs_IsTriedAgainAfterTheTimeout(string step)
    {
        await using var post = new ScriptedPost(new Dictionary<string, string?> { [step] = null });
        MailOptions options = Options(post.Port);
        options.Timeout = TimeSpan.FromSeconds(1);
        Assert.Equal(DeliveryOutcome.TryAgain($"localhost:{post.Port} did not answer within 1 seconds."), await SendAsync(options));
    }

    [Fact]
    public async Task SendAsync_TakenAndThenTroubleInParting_IsDelivered()
    {
        await using var post = new ScriptedPost(new Dictionary<string, string?> { ["QUIT"] = "421 gone already" });
        Assert.Equal(DeliveryOutcome.Delivered, await SendAsync(Options(post.Port)));
    }

    [Fact]
    public async Task SendAsync_NobodyListens_IsTriedAgain()
    {
        int port;
        await using (var post = new ScriptedPost(new Dictionary<string, string?>()))
            port = post.Port;
        DeliveryOutcome outcome = await SendAsync(Options(port));
        Assert.Equal(DeliveryResult.TryAgain, outcome.Result);
        Assert.StartsWith($"localhost:{port} could not be reached: ", outcome.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SendAsync_Password_LetsInAndAWrongOneIsExplained()
    {
        await using PostOffice post = PostOffice.Open(passwordNeeded: true);
        MailOptions options = Options(post.Port);
        (options.User, options.Password) = (PostOffice.User, PostOffice.Password);
        Assert.Equal(DeliveryOutcome.Delivered, await SendAsync(options));
        options.Password = "three";
        DeliveryOutcome outcome = await SendAsync(options);
        Assert.Equal(DeliveryResult.TryAgain, outcome.Result);
        Assert.Contains("Mail:User or Mail:Password is wrong", outcome.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SendAsync_ServerWithoutTls_GetsNoLetterWhereTlsIsWanted()
    {
        await using PostOffice post = PostOffice.Open();
        MailOptions options = Options(post.Port);
        options.Tls = MailTls.StartTls;
        DeliveryOutcome outcome = await SendAsync(options);
        Assert.Equal(DeliveryResult.TryAgain, outcome.Result);
        Assert.StartsWith($"localhost:{post.Port} cannot do what Mail:Tls or Mail:User asks for: ", outcome.Trouble, StringComparison.Ordinal);
        Assert.Empty(post.Letters);
    }

    [Theory]
    [InlineData("localhost", true, true)]
    [InlineData("localhost", false, false)]
    [InlineData("elsewhere.example.org", true, false)]
    public async Task SendAsync_OwnCertificate_IsTrustedForItsNameWhereTheSettingsNameIt(string name, bool named, bool taken)
    {
        using X509Certificate2 certificate = PostOffice.Certificate(name);
        string file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, certificate.ExportCertificatePem());
        await using PostOffice post = PostOffice.Open(certificate);
        MailOptions options = Options(post.Port);
        (options.Tls, options.CertificateFile) = (MailTls.StartTls, named ? file : null);
        DeliveryOutcome outcome = await SendAsync(options);
        File.Delete(file);
        Assert.Equal((taken, taken ? 1 : 0), (outcome.Result == DeliveryResult.Delivered, post.Letters.Count));
        if (!taken)
            Assert.StartsWith($"The encrypted connection to localhost:{post.Port} failed: ", outcome.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SendAsync_NoServerInTheSettings_SaysWhatIsMissing()
    {
        var channel = new MailChannel(new MailOptions(), new FixedLinks(), new FakeClock(Make.Now));
        DeliveryOutcome outcome = await channel.SendAsync(Make.Notice(), Make.Route(Channel.Email, "mira@example.org"), null, CancellationToken.None);
        Assert.Equal(DeliveryOutcome.TryAgain(channel.Missing!), outcome);
    }

    private static MailOptions Options(int port) =>
        new() { Host = "localhost", Port = port, Tls = MailTls.None, From = "Number Nine <kitchen@example.org>", Timeout = TimeSpan.FromSeconds(20) };

    private static Task<DeliveryOutcome> SendAsync(
        MailOptions options, bool asks = false, string? late = null, string to = "mira@example.org", string? root = "https://kitchen.example.org") =>
        new MailChannel(options, new FixedLinks(root), new FakeClock(Make.Now))
            .SendAsync(Make.Notice(asks), Make.Route(Channel.Email, to), late, CancellationToken.None);
}
