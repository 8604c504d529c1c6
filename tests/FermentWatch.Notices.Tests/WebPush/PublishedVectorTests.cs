using System.Buffers.Text;
using System.Security.Cryptography;

namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>
/// The receiver that the other tests decrypt and verify with, held to the published examples: were it wrong in the same way as the
/// sender, the others could not see it.
/// </summary>
public class PublishedVectorTests
{
    // M. Thomson, "Message Encryption for Web Push", RFC 8291, 2017: section 5 and appendix A. Taken from copies in public source; the
    // published sentence comes out, which it would not if a letter were wrong.
    private const string Receiver = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4";
    private const string ReceiverPrivate = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94";
    private const string Auth = "BTBZMqHH6r4Tts7J_aSIgg";

    private const string Body =
        "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8w"
        + "EqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN";

    // M. Thomson, P. Beverloo, "Voluntary Application Server Identification (VAPID) for Web Push", RFC 8292, 2017: section 2.4, figure 1.
    // Taken from copies in public source; the signature fits the key, which it would not if a letter were wrong.
    private const string Authorization =
        "vapid t=eyJ0eXAiOiJKV1QiLCJhbGciOiJFUzI1NiJ9."
        + "eyJhdWQiOiJodHRwczovL3B1c2guZXhhbXBsZS5uZXQiLCJleHAiOjE0NTM1MjM3NjgsInN1YiI6Im1haWx0bzpwdXNoQGV4YW1wbGUuY29tIn0."
        + "i3CYb7t4xfxCDquptFOepC9GAu_HLGkMlMuCGSK2rpiUfnK9ojFwDXb1JrErtmysazNjjvW2L9OkSSHzvoD1oA, "
        + "k=BA1Hxzyi1RUM1b5wjxsn7nGxAszw2u61m164i3MrAIxHF6YK5h4SDYic-dRuU_RCPCfA5aq9ojSwk5Y2EmClBPs";

    [Fact]
    public void Decrypt_ExampleOfRfc8291_IsThePublishedSentence()
    {
        using PushBrowser browser = PushBrowser.Of(Receiver, ReceiverPrivate, Auth);
        Assert.Equal("When I grow up, I want to be a watermelon", browser.Decrypt(Base64Url.DecodeFromChars(Body)));
    }

    [Fact]
    public void Decrypt_ExampleOfRfc8291WithOneBitChanged_IsRefused()
    {
        using PushBrowser browser = PushBrowser.Of(Receiver, ReceiverPrivate, Auth);
        byte[] body = Base64Url.DecodeFromChars(Body);
        body[^20] ^= 1;
        Assert.ThrowsAny<CryptographicException>(() => browser.Decrypt(body));
    }

    [Fact]
    public void Verify_ExampleOfRfc8292_IsSignedByItsKey() =>
        Assert.Equal(
            new VapidHeader("ES256", "https://push.example.net", 1453523768, "mailto:push@example.com",
            "BA1Hxzyi1RUM1b5wjxsn7nGxAszw2u61m164i3MrAIxHF6YK5h4SDYic-dRuU_RCPCfA5aq9ojSwk5Y2EmClBPs"),
            VapidHeader.Verify(Authorization));

    [Fact]
    public void Verify_ExampleOfRfc8292WithALaterEnd_IsRefused() =>
        Assert.Throws<CryptographicException>(() =>
            VapidHeader.Verify(Authorization.Replace("LCJleHAiOjE0NTM1", "LCJleHAiOjE0NTM2", StringComparison.Ordinal)));
}
