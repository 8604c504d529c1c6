namespace FermentWatch.Service.Api.Answers;

/// <summary>A gateway that was added, with the password that is said this once.</summary>
/// <param name="Host">Address of our broker.</param>
/// <param name="Port">Its port.</param>
/// <param name="Tls">Whether that port speaks TLS.</param>
/// <param name="User">Its user name.</param>
/// <param name="Password">Its password, which is not kept.</param>
/// <param name="Filter">The topic filter under which it may publish.</param>
public sealed record NewGatewayAnswer(string Host, int Port, bool Tls, string User, string Password, string Filter);
