namespace FermentWatch.Kitchen.Notices;

/// <summary>What a browser is shown so that it lets us send to it.</summary>
public interface IPushOffer
{
    /// <summary>The public key as browsers want it for a subscription: base64url.</summary>
    Task<string> PublicKeyAsync(CancellationToken cancellationToken);
}
