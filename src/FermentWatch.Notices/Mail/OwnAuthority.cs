using System.Net.Security;
using System.Security.Cryptography.X509Certificates;

namespace FermentWatch.Notices.Mail;

/// <summary>Trusts certificates signed by the household's own authority, or the certificate itself, and no others.</summary>
internal sealed class OwnAuthority(X509Certificate2Collection trusted)
{
    /// <summary>Whether a server's certificate is for its name and leads to a trusted one.</summary>
    public bool IsTrusted(object sender, X509Certificate? certificate, X509Chain? presented, SslPolicyErrors errors)
    {
        if (certificate is not X509Certificate2 server || (errors & ~SslPolicyErrors.RemoteCertificateChainErrors) != SslPolicyErrors.None)
            return false;
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(trusted);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return chain.Build(server);
    }
}
