namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// Counter-based random numbers: Philox4x32-10 (Salmon, Moraes, Dror and Shaw 2011, Parallel random numbers: as easy as
/// 1, 2, 3, SC11). The number at a counter needs no number before it, so the order of asking does not matter.
/// </summary>
public static class Philox
{
    private const uint M0 = 0xD2511F53;
    private const uint M1 = 0xCD9E8D57;
    private const uint W0 = 0x9E3779B9;
    private const uint W1 = 0xBB67AE85;

    /// <summary>Four words of the block at a counter under a key.</summary>
    public static (uint A, uint B, uint C, uint D) Block(uint c0, uint c1, uint c2, uint c3, uint k0, uint k1)
    {
        unchecked
        {
            for (int round = 0; round < 10; round++)
            {
                ulong p0 = (ulong)M0 * c0;
                ulong p1 = (ulong)M1 * c2;
                (c0, c1, c2, c3) = ((uint)(p1 >> 32) ^ c1 ^ k0, (uint)p1, (uint)(p0 >> 32) ^ c3 ^ k1, (uint)p0);
                k0 += W0;
                k1 += W1;
            }
        }
        return (c0, c1, c2, c3);
    }

    /// <summary>A number above 0 and below 1 for a member, a purpose and an index, under a key.</summary>
    public static double Uniform(ulong key, uint purpose, uint member, uint index)
    {
        (uint a, uint b, _, _) = Block(member, index, purpose, 0, unchecked((uint)key), (uint)(key >> 32));
        ulong bits = (((ulong)a << 32) | b) >> 12;
        return (bits + 0.5) * (1.0 / (1UL << 52));
    }

    /// <summary>A standard normal deviate.</summary>
    public static double Normal(ulong key, uint purpose, uint member, uint index) =>
        NormalDistribution.Quantile(Uniform(key, purpose, member, index));

    /// <summary>A key from several values: each is folded in by the finalizer of SplitMix64 (Steele, Lea and Flood 2014).</summary>
    public static ulong Key(params ReadOnlySpan<ulong> parts)
    {
        ulong key = 0x9E3779B97F4A7C15;
        unchecked
        {
            foreach (ulong part in parts)
            {
                ulong z = key + (part * 0x9E3779B97F4A7C15) + 0x632BE59BD9B4E019;
                z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
                z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
                key = z ^ (z >> 31);
            }
        }
        return key;
    }
}
