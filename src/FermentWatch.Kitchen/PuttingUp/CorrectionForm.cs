namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>What is to be put right about a jar, as typed: the fields of the put-up form; null leaves what stands. How many alike means nothing
/// here.</summary>
public sealed record CorrectionForm : PutUpForm
{
    /// <summary>Since when cover, lid and how sour are what they are now, on the household's clock; empty is now.</summary>
    public string? Since { get; init; }

    /// <summary>A put-up form as the correction of the jar that it was meant to put up: what it left empty is empty.</summary>
    public static CorrectionForm Of(PutUpForm form) => new()
    {
        What = form.What, ItsName = form.ItsName ?? "", HowMuch = form.HowMuch, Also = form.Also ?? "", Cut = OrAsItStands(form.Cut),
        AddedWater = form.AddedWater ?? "", StarterFrom = form.StarterFrom ?? "", StarterBrine = form.StarterBrine ?? "",
        Vinegar = form.Vinegar ?? "", VinegarStrength = form.VinegarStrength ?? "", Place = form.Place, Target = form.Target, Salt = form.Salt,
        SaltKnowledge = OrAsItStands(form.SaltKnowledge), Vessel = form.Vessel, Cover = form.Cover, Lid = form.Lid, PackedAt = form.PackedAt,
        Name = OrAsItStands(form.Name), ItIsRight = form.ItIsRight,
    };

    private static string? OrAsItStands(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed;
}
