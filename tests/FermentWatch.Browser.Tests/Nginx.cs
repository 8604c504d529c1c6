using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FermentWatch.Browser.Tests;

/// <summary>Debian's nginx before a kitchen, by the example that we ship, with a certificate it signed itself.</summary>
internal sealed class Nginx : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-nginx-");
    private Process? _process;

    /// <summary>Where people reach it, without a slash at its end.</summary>
    public string Address { get; } = $"https://kitchen.localhost:{FreePort().ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Starts it before a kitchen, at the root or under a sub-path, and waits until it answers.</summary>
    public async Task StartAsync(string kitchen, string subPath)
    {
        int port = new Uri(Address).Port;
        WriteCertificate();
        string site = (await File.ReadAllTextAsync(Example()))
            .Replace("listen 443 ssl", $"listen 127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)} ssl", StringComparison.Ordinal)
            .Replace("kitchen.example.org;", "kitchen.localhost;", StringComparison.Ordinal)
            .Replace("/etc/ssl/fermentwatch", _folder.FullName, StringComparison.Ordinal)
            .Replace("location / {", $"location {subPath}/ {{", StringComparison.Ordinal)
            .Replace("http://127.0.0.1:8340", kitchen, StringComparison.Ordinal);
        string temporary = string.Join('\n', ((string[])["client_body", "proxy", "fastcgi", "uwsgi", "scgi"])
            .Select(kind => $"{kind}_temp_path {_folder.FullName}/{kind};"));
        await File.WriteAllTextAsync(In("nginx.conf"),
            $"daemon off; pid {In("pid")}; error_log {In("error.log")};\nevents {{ }}\nhttp {{ access_log off;\n{temporary}\n{site}\n}}\n");
        var info = new ProcessStartInfo(File.Exists("/usr/sbin/nginx") ? "/usr/sbin/nginx" : "nginx") { RedirectStandardError = true };
        foreach (string argument in (string[])["-c", In("nginx.conf"), "-p", _folder.FullName, "-e", In("error.log")])
            info.ArgumentList.Add(argument);
        _process = Process.Start(info)!;
        long start = TimeProvider.System.GetTimestamp();
        while (!await ListensAsync(port))
            if (_process.HasExited || TimeProvider.System.GetElapsedTime(start) > Patience)
                throw new InvalidOperationException($"nginx did not start: {await _process.StandardError.ReadToEndAsync()}");
    }

    public void Dispose()
    {
        if (_process is not null)
        {
            // Its workers end with it when it is asked, and stay when it is killed.
            Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]).WaitForExit(Patience);
            _process.WaitForExit(Patience);
            _process.Dispose();
        }
        _folder.Delete(recursive: true);
    }

    private string In(string file) => Path.Combine(_folder.FullName, file);

    private void WriteCertificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=kitchen.localhost", key, HashAlgorithmName.SHA256);
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 certificate = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(2));
        File.WriteAllText(In("certificate.pem"), certificate.ExportCertificatePem());
        File.WriteAllText(In("key.pem"), key.ExportPkcs8PrivateKeyPem());
    }

    private static async Task<bool> ListensAsync(int port)
    {
        using var probe = new TcpClient();
        try
        {
            await probe.ConnectAsync(IPAddress.Loopback, port);
            return true;
        }
        catch (SocketException)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static string Example()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return Path.Combine(folder.FullName, "deploy", "nginx.conf");
    }
}
