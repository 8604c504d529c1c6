using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>
/// The certificate by which the broker shows who it is: a PEM file with its key in it or beside it, or a PKCS #12 file. It is
/// read again when the file has changed, so that a renewal needs no restart.
/// </summary>
public sealed class ServerCertificate : IDisposable
{
    private static readonly TimeSpan _lookAgainAfter = TimeSpan.FromMinutes(1);

    private readonly string _file;
    private readonly string? _keyFile;
    private readonly string? _password;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private X509Certificate2 _current;
    private DateTime _written;
    private long _lookedAt;

    /// <summary>Reads the certificate.</summary>
    /// <param name="file">PEM or PKCS #12 (its name ends in .pfx or .p12).</param>
    /// <param name="keyFile">PEM file of the key; null where the key is in <paramref name="file"/>.</param>
    /// <param name="password">Password of the key, null if it has none.</param>
    /// <param name="time">Tells when to look for a change again.</param>
    /// <exception cref="IOException">A file cannot be read.</exception>
    /// <exception cref="CryptographicException">A file is no certificate, or its key or password does not fit.</exception>
    public ServerCertificate(string file, string? keyFile, string? password, TimeProvider time)
    {
        (_file, _keyFile, _password, _time) = (file, keyFile, password, time);
        (_written, _lookedAt) = (File.GetLastWriteTimeUtc(file), time.GetTimestamp());
        _current = Load();
    }

    /// <summary>The certificate as the file has it now; the last good one while the file cannot be read.</summary>
    public X509Certificate2 Current()
    {
        lock (_gate)
        {
            if (_time.GetElapsedTime(_lookedAt) >= _lookAgainAfter)
            {
                _lookedAt = _time.GetTimestamp();
                LoadIfChanged();
            }
            return _current;
        }
    }

    public void Dispose() => _current.Dispose();

    private void LoadIfChanged()
    {
        try
        {
            DateTime written = File.GetLastWriteTimeUtc(_file);
            if (written == _written)
                return;
            // The old one may still be in use by handshakes: it is left to the finalizer.
            _current = Load();
            _written = written;
        }
        catch (Exception exception) when (exception is IOException or CryptographicException or UnauthorizedAccessException)
        {
            // A renewal half written: the next look finds it whole.
        }
    }

    private X509Certificate2 Load()
    {
        string extension = Path.GetExtension(_file);
        if (extension.Equals(".pfx", StringComparison.OrdinalIgnoreCase) || extension.Equals(".p12", StringComparison.OrdinalIgnoreCase))
            return X509CertificateLoader.LoadPkcs12FromFile(_file, _password);
        return _password is null
            ? X509Certificate2.CreateFromPemFile(_file, _keyFile)
            : X509Certificate2.CreateFromEncryptedPemFile(_file, _password, _keyFile);
    }
}
