using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FermentWatch.Intake.Tests.Embedded;

/// <summary>A certificate for loopback in files of its own, as a household would make one.</summary>
internal sealed class SelfSignedCertificate : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-tls-");

    public SelfSignedCertificate(string name = "broker")
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 certificate = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(30));
        CertificateFile = Path.Combine(_folder.FullName, "broker.pem");
        KeyFile = Path.Combine(_folder.FullName, "broker.key");
        Pkcs12File = Path.Combine(_folder.FullName, "broker.pfx");
        File.WriteAllText(CertificateFile, certificate.ExportCertificatePem());
        File.WriteAllText(KeyFile, key.ExportPkcs8PrivateKeyPem());
        File.WriteAllBytes(Pkcs12File, certificate.Export(X509ContentType.Pkcs12, "secret"));
    }

    public string CertificateFile { get; }

    public string KeyFile { get; }

    /// <summary>The same with its key, password "secret".</summary>
    public string Pkcs12File { get; }

    public void Dispose() => _folder.Delete(true);
}
