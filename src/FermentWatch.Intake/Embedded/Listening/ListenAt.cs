using System.Net;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>Where to listen, and with which certificate; without one the connection is plain.</summary>
internal sealed record ListenAt(IPEndPoint EndPoint, ServerCertificate? Certificate);
