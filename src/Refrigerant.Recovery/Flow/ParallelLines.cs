using System.Collections.Generic;

namespace Refrigerant.Recovery.Flow;

/// <summary>Lines side by side between the same two pressures, as a high and a low side drawn at once; plain SI doubles.</summary>
internal sealed class ParallelLines
{
    private readonly VaporLine[] _branches;
    private readonly double[] _flows;

    public ParallelLines(IReadOnlyList<Line> branches)
    {
        _branches = new VaporLine[branches.Count];
        _flows = new double[branches.Count];
        for (int i = 0; i < branches.Count; i++)
        {
            _branches[i] = new VaporLine(branches[i]);
        }
    }

    /// <summary>Number of branches.</summary>
    public int Count => _branches.Length;

    /// <summary>Flow through a branch as of the last call, kg/s.</summary>
    public double FlowIn(int branch) => _flows[branch];

    /// <summary>Mass flow through all branches, kg/s; choked where all of them are. Arguments as in <see cref="VaporLine.MassFlow"/>.</summary>
    public double MassFlow(double pressure, double density, double exponent, double viscosity, double outletPressure, out bool choked)
    {
        double sum = 0;
        choked = true;
        for (int i = 0; i < _branches.Length; i++)
        {
            _flows[i] = _branches[i].MassFlow(pressure, density, exponent, viscosity, outletPressure, out bool branchChoked);
            sum += _flows[i];
            choked &= branchChoked;
        }

        return sum;
    }
}
