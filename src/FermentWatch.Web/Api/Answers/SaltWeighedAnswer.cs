using FermentWatch.Kitchen.PuttingUp;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What is asked about the salt of a jar, each as it is typed on the put-up page.</summary>
internal sealed record SaltQuery
{
    [FromQuery(Name = "what")] public string? What { get; init; }
    [FromQuery(Name = "how_much")] public string? HowMuch { get; init; }
    [FromQuery(Name = "also")] public string? Also { get; init; }
    [FromQuery(Name = "added_water")] public string? AddedWater { get; init; }
    [FromQuery(Name = "salt")] public string? Salt { get; init; }
    [FromQuery(Name = "salt_of")] public string? SaltOf { get; init; }
    [FromQuery(Name = "tub_before")] public string? TubBefore { get; init; }
    [FromQuery(Name = "tub_after")] public string? TubAfter { get; init; }
    [FromQuery(Name = "how_many")] public string? HowMany { get; init; }

    public PutUpForm ToForm() => new()
    {
        What = What, HowMuch = HowMuch, Also = Also, AddedWater = AddedWater, Salt = Salt, SaltOf = SaltOf, TubBefore = TubBefore,
        TubAfter = TubAfter, HowMany = HowMany,
    };
}

/// <summary>The salt for one jar.</summary>
internal sealed record SaltWeighedAnswer
{
    /// <summary>To weigh, g; null where it is by taste.</summary>
    public double? Grams { get; init; }

    /// <summary>Per cent of vegetables and added water together; null where it is by taste.</summary>
    public double? Percent { get; init; }

    /// <summary>The same in words.</summary>
    public required string Words { get; init; }

    /// <summary>By the spoon, and how far that lies; null where it is by taste.</summary>
    public string? Spoons { get; init; }
}
