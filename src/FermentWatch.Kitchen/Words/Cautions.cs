namespace FermentWatch.Kitchen.Words;

/// <summary>The cautions of this kitchen. Local food-safety guidance comes first, always.</summary>
public static class Cautions
{
    private const string CommonPractice = "common practice, no source";

    public static readonly Caution LocalGuidanceFirst = new("local-guidance",
        "Your local food-safety guidance comes first. When in doubt, throw it out.", CommonPractice);

    public static readonly Caution VulnerablePeople = new("vulnerable-people",
        "Extra care for under fives, in pregnancy, in old age and with weak immunity: ask a doctor before serving raw ferments.", CommonPractice);

    public static readonly Caution SaltRestricted = new("salt-restricted",
        "Ferments are salty: on a salt-restricted diet, ask first.", CommonPractice);

    public static readonly Caution Histamine = new("histamine",
        "Ferments hold histamine and tyramine; both can act on some people and with some medicines.", CommonPractice);

    public static readonly Caution EarlyNitrite = new("early-nitrite",
        "Leafy vegetables can hold nitrite in the first days: no tasting on days 2 to 5 unless the pH was measured below the acid line.", CommonPractice);

    public static readonly Caution NoPlainWater = new("no-plain-water",
        $"Never top up with plain water: it thins the salt. Use {Guides.TopUpBrine.Published}.",
        "USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015");

    public static readonly Caution OilIsNoSeal = new("oil-no-seal",
        "Oil is no seal: it keeps air out where germs that hate air then grow.", CommonPractice);

    public static readonly Caution GlassAndPressure = new("glass-pressure",
        "A tight lid builds pressure and glass can burst: let gas out daily while it bubbles, or use a vented lid.", CommonPractice);

    public static readonly Caution CleanHands = new("clean-hands",
        "Clean hands, clean tools, no chipped or metal vessels.", CommonPractice);

    public static readonly Caution EarlyChilling = new("early-chilling",
        "Public advice lets kraut work 3 to 6 weeks before it goes into the cold. Cold slows the dying of germs: in cabbage at 18 to 22 C some "
        + "lasted up to 15 days, in whole heads 28; at 4 C some last longer than a month.",
        "USDA Guide 6; Niksic et al. 2005, J. Food Protection 68:1367; Lu, Breidt & Perez-Diaz 2013, J. Food Sci. 78:M264");

    public static readonly Caution NeverTasteToDecide = new("never-taste-to-decide",
        "Never taste to decide whether something is wrong. If you cannot tell film from mould, treat it as mould.", CommonPractice);

    public static readonly Caution ForecastIsNoMeasurement = new("forecast-no-measurement",
        "A forecast is not a measurement, and it knows nothing of mould or spoilage.", "this project's own rule");

    /// <summary>Shown where a jar is put up.</summary>
    public static readonly IReadOnlyList<Caution> PuttingUp =
        [LocalGuidanceFirst, CleanHands, GlassAndPressure, OilIsNoSeal, NoPlainWater, SaltRestricted];

    /// <summary>Shown where somebody decides what to do with a jar: taste, chill, serve, keep or discard.</summary>
    public static readonly IReadOnlyList<Caution> Deciding =
        [LocalGuidanceFirst, NeverTasteToDecide, EarlyNitrite, EarlyChilling, NoPlainWater, VulnerablePeople, SaltRestricted, Histamine, ForecastIsNoMeasurement];
}
