namespace FermentWatch.Kitchen.Guides;

/// <summary>The cautions of this kitchen. Local food-safety guidance comes first, always.</summary>
public static class Cautions
{
    private const string CommonPractice = "common practice, no source";

    public static readonly Caution LocalGuidanceFirst = new("local-guidance",
        "Your local food-safety guidance comes first. When in doubt, throw it out.", "CDC, Home-Canned Foods (when in doubt, throw it out)");

    public static readonly Caution VulnerablePeople = new("vulnerable-people",
        "Extra care for under fives, in pregnancy, in old age and with weak immunity: ask a doctor before serving raw ferments.",
            "CDC, People at Increased Risk for Food Poisoning");

    public static readonly Caution SaltRestricted = new("salt-restricted",
        "Ferments are salty: on a salt-restricted diet, ask first.",
            "WHO 2012, Guideline: sodium intake for adults and children (below 2 g of sodium a day)");

    public static readonly Caution Histamine = new("histamine",
        "Ferments hold histamine and tyramine, which some people do not bear. With MAO inhibitors (some medicines against depression and "
        + "Parkinson's disease, the antibiotic linezolid) tyramine can drive the blood pressure up: ask a doctor or pharmacist first.",
        "FDA, prescribing information of linezolid (names sauerkraut); EFSA 2011, Biogenic amines in fermented foods, EFSA Journal 9(10):2393");

    public static readonly Caution EarlyNitrite = new("early-nitrite",
        "Cabbages, leaves, beet, radish, daikon, celery, fennel and their kin can hold nitrite early on: no tasting until nine in ten such jars "
        + "are below pH 4.5, or the pH was measured below the acid line.",
        "the peak goes down below pH 4.5: nitrate, nitrite and organic acids in pickled Chinese cabbage, abstract, authors not shown; rich in "
        + "nitrate: EFSA 2008, The EFSA Journal 689:1-79");

    public static readonly Caution NoPlainWater = new("no-plain-water",
        $"Never top up with plain water: it thins the salt. Use {Guides.TopUpBrine.Published}.",
        "USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015");

    public static readonly Caution OilIsNoSeal = new("oil-no-seal",
        "Oil is no seal: it keeps air out where germs that hate air then grow.", CommonPractice);

    public static readonly Caution GlassAndPressure = new("glass-pressure",
        "A tight lid builds pressure and glass can burst: let gas out daily while it bubbles, or use a vented lid.", CommonPractice);

    public static readonly Caution CleanHands = new("clean-hands",
        "Clean hands, clean tools. No chipped vessel; none of copper, brass, iron, galvanized or aluminium, which acid and salt eat; no old or "
        + "unknown glaze, which may give lead.",
        "Univ. of Nebraska-Lincoln Extension (metals); North Carolina State Univ. 2004 (aluminium); FDA, Lead-Glazed Traditional Pottery, 2010");

    public static readonly Caution EarlyChilling = new("early-chilling",
        "Cold slows the dying of germs: in cabbage at 18 to 22 C some lasted up to 15 days, in whole heads 28; at 4 C some last longer than a "
        + "month. So public advice lets kraut work 3 to 6 weeks first. Of most other vegetables no tested time is known here: measure before the "
        + "cold.",
        "USDA Guide 6; Niksic et al. 2005, J. Food Protection 68:1367; Lu, Breidt & Perez-Diaz 2013, J. Food Sci. 78:M264");

    public static readonly Caution NeverTasteToDecide = new("never-taste-to-decide",
        "Never taste to decide whether something is wrong. If you cannot tell film from mould, treat it as mould.",
            "CDC, Home-Canned Foods (a small taste can harm); see mould: do not taste: NDSU");

    public static readonly Caution ForecastIsNoMeasurement = new("forecast-no-measurement",
        "A forecast is not a measurement, and it knows nothing of mould or spoilage.", "this project's own rule");

    public static readonly Caution LoosenInTheCold = new("loosen-in-the-cold",
        "In the cold it works on slowly and still makes gas: loosen the lid once a week.", CommonPractice);

    /// <summary>Shown where a jar is put up.</summary>
    public static readonly IReadOnlyList<Caution> PuttingUp =
        [LocalGuidanceFirst, CleanHands, GlassAndPressure, OilIsNoSeal, NoPlainWater, SaltRestricted];

    /// <summary>Shown where somebody decides what to do with a jar: taste, chill, serve, keep or discard.</summary>
    public static readonly IReadOnlyList<Caution> Deciding =
        [LocalGuidanceFirst, NeverTasteToDecide, EarlyNitrite, EarlyChilling, NoPlainWater, VulnerablePeople, SaltRestricted, Histamine,
            ForecastIsNoMeasurement];
}

/// <summary>A caution shown where a decision is made.</summary>
/// <param name="Key">Stable name, for tests and links.</param>
/// <param name="Text">The caution in one or two sentences.</param>
/// <param name="Source">Who says so, or that it is common practice.</param>
public sealed record Caution(string Key, string Text, string Source);
