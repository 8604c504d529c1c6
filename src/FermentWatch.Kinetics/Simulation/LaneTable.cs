using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Constants of many members, four to a group, so that a vector holds the same constant of four members: as many as the registers of
/// most machines. Two groups move together as a block. The last block is filled up with copies of the last member: they are never read.
/// </summary>
internal sealed class LaneTable
{
    /// <summary>Members of a group.</summary>
    public const int Lanes = 4;

    private const int GroupsInBlock = 2;

    private readonly double[] _values;

    public LaneTable(int members)
    {
        Members = members;
        Blocks = (members + (Lanes * GroupsInBlock) - 1) / (Lanes * GroupsInBlock);
        _values = new double[Blocks * GroupsInBlock * MemberConstant.Count * Lanes];
    }

    public int Members { get; }

    public int Blocks { get; }

    /// <summary>Writes a member's constants, in the order of <see cref="MemberConstant"/>.</summary>
    public void Set(int member, ReadOnlySpan<double> constants)
    {
        Put(member, constants);
        if (member == Members - 1)
        {
            for (int copy = Members; copy < Blocks * GroupsInBlock * Lanes; copy++)
                Put(copy, constants);
        }
    }

    /// <summary>The first member of a group.</summary>
    public static int FirstMember(int block, int group) => ((block * GroupsInBlock) + group) * Lanes;

    /// <summary>The vectors of a group of a block.</summary>
    public ReadOnlySpan<Vector256<double>> Group(int block, int group) =>
        MemoryMarshal.Cast<double, Vector256<double>>(_values.AsSpan(((block * GroupsInBlock) + group) * MemberConstant.Count * Lanes,
            MemberConstant.Count * Lanes));

    private void Put(int member, ReadOnlySpan<double> constants)
    {
        int at = (member / Lanes * MemberConstant.Count * Lanes) + (member % Lanes);
        for (int slot = 0; slot < MemberConstant.Count; slot++)
            _values[at + (slot * Lanes)] = constants[slot];
    }
}
