using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Constants of many members, eight to a block, so that a vector holds the same constant of eight members. The last block
/// is filled up with copies of the last member: they cost nothing and are never read.
/// </summary>
internal sealed class LaneTable
{
    public const int Lanes = 8;

    private readonly double[] _values;

    public LaneTable(int members)
    {
        Members = members;
        Blocks = (members + Lanes - 1) / Lanes;
        _values = new double[Blocks * Slot.Count * Lanes];
    }

    public int Members { get; }

    public int Blocks { get; }

    /// <summary>Writes a member's constants, in the order of <see cref="Slot"/>.</summary>
    public void Set(int member, ReadOnlySpan<double> constants)
    {
        Put(member, constants);
        if (member == Members - 1)
        {
            for (int copy = Members; copy < Blocks * Lanes; copy++)
                Put(copy, constants);
        }
    }

    /// <summary>The vectors of a block.</summary>
    public ReadOnlySpan<Vector512<double>> Block(int block) =>
        MemoryMarshal.Cast<double, Vector512<double>>(_values.AsSpan(block * Slot.Count * Lanes, Slot.Count * Lanes));

    private void Put(int member, ReadOnlySpan<double> constants)
    {
        int at = (member / Lanes * Slot.Count * Lanes) + (member % Lanes);
        for (int slot = 0; slot < Slot.Count; slot++)
            _values[at + (slot * Lanes)] = constants[slot];
    }
}
