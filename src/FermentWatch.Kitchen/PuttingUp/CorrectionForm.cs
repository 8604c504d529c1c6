namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>What is to be put right about a jar, as typed: the fields of the put-up form; null leaves what stands. How many alike means nothing here.</summary>
public sealed record CorrectionForm : PutUpForm
{
    /// <summary>Since when cover, lid and how sour are what they are now, on the household's clock; empty is now.</summary>
    public string? Since { get; init; }
}
