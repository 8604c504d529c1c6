using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace FermentWatch.Notices.Tests.Mail;

/// <summary>A real SMTP server on loopback that keeps what it takes. It knows no box of the name <c>nobody</c>, and <c>busy</c> is full just
/// now.</summary>
internal sealed class PostOffice : IAsyncDisposable
{
    public const string User = "kitchen", Password = "four wet cabbages";

    private readonly CancellationTokenSource _stop = new();
    private readonly ConcurrentQueue<MimeMessage> _letters = new();
    private readonly Task _running;

    private PostOffice(X509Certificate2? certificate, bool passwordNeeded)
    {
        Port = FreePort();
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(new Store(_letters));
        services.Add((IMailboxFilter)new Boxes());
        services.Add((IUserAuthenticator)new Keys());
        ISmtpServerOptions options = new SmtpServerOptionsBuilder().ServerName("post.example.org")
            .Endpoint(endpoint =>
            {
                endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port)).AuthenticationRequired(passwordNeeded)
                    .AllowUnsecureAuthentication(certificate is null);
                if (certificate is not null)
                    endpoint.Certificate(certificate);
            }).Build();
        _running = new SmtpServer.SmtpServer(options, services).StartAsync(_stop.Token);
    }

    public int Port { get; }

    /// <summary>Everything taken so far, in order.</summary>
    public IReadOnlyList<MimeMessage> Letters => [.. _letters];

    public static PostOffice Open(X509Certificate2? certificate = null, bool passwordNeeded = false) => new(certificate, passwordNeeded);

    /// <summary>A certificate for a name that nobody signed.</summary>
    public static X509Certificate2 Certificate(string name)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(name);
        request.CertificateExtensions.Add(names.Build());
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 made = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null);
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running;
        _stop.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private sealed class Store(ConcurrentQueue<MimeMessage> letters) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var bytes = new MemoryStream(buffer.ToArray());
            letters.Enqueue(await MimeMessage.LoadAsync(bytes, cancellationToken));
            return SmtpResponse.Ok;
        }
    }

    private sealed class Boxes : MailboxFilter
    {
        public override Task<bool> CanDeliverToAsync(ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken) =>
            to.User switch
        {
            "nobody" => throw new SmtpResponseException(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such box here")),
            "busy" => throw new SmtpResponseException(new SmtpResponse(SmtpReplyCode.InsufficientStorage, "the box is full")),
            _ => Task.FromResult(true),
        };
    }

    private sealed class Keys : UserAuthenticator
    {
        public override Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) =>
            Task.FromResult((user, password) == (User, Password));
    }
}
