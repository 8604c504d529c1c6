namespace FermentWatch.Kitchen.Households;

/// <summary>What this household does about mould, where public advice disagrees. Whoever cannot tell film from mould treats it as mould under either.</summary>
public enum MouldPolicy
{
    /// <summary>Any mould: the jar goes. The default, and the stricter advice.</summary>
    ThrowOut = 0,

    /// <summary>Small patches of green or grey on top may be skimmed; much of it, and black, pink or orange: the jar goes (Oregon State SP 50-745; Ask Extension).</summary>
    SkimSmallPatches = 1,
}
