namespace FermentWatch.Web.Pages.PuttingUp;

/// <summary>What a form says of a jar, as the browser sends it, whether the jar is put up or put right.</summary>
public abstract class JarInput
{
    public string? What { get; set; }

    /// <summary>The name of something else.</summary>
    public string? ItsName { get; set; }

    public string? HowMuch { get; set; }

    public string? Also { get; set; }

    public string? Cut { get; set; }

    /// <summary>A per cent, a mass, or <c>by taste</c>.</summary>
    public string? Salt { get; set; }

    public string? SaltKnowledge { get; set; }

    public string? AddedWater { get; set; }

    /// <summary>Number of the jar whose brine goes in.</summary>
    public string? StarterFrom { get; set; }

    public string? StarterBrine { get; set; }

    public string? Vinegar { get; set; }

    public string? VinegarStrength { get; set; }

    public string? Vessel { get; set; }

    public string? Cover { get; set; }

    public string? Lid { get; set; }

    public string? Place { get; set; }

    public string? Target { get; set; }

    public string? PackedAt { get; set; }

    public string? Name { get; set; }

    /// <summary>What looks odd is right.</summary>
    public bool ItIsRight { get; set; }
}
