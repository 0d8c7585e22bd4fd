using System;
using System.Collections;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Processes;

/// <summary>The course of a stage, in order of time: enough points to plot it, never more than a few hundred. Immutable.</summary>
public sealed class Trajectory : IReadOnlyList<TrajectoryPoint>
{
    private readonly TrajectoryPoint[] _points;

    internal Trajectory(TrajectoryPoint[] points) => _points = points;

    /// <summary>Number of points.</summary>
    public int Count => _points.Length;

    /// <summary>A point by its place, 0 to <see cref="Count"/> − 1.</summary>
    /// <param name="index">Its place.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such point.</exception>
    public TrajectoryPoint this[int index] => index >= 0 && index < _points.Length
        ? _points[index]
        : throw new ArgumentOutOfRangeException(nameof(index), FormattableString.Invariant($"index is {index}; there are {_points.Length} points."));

    /// <summary>The points in order of time.</summary>
    public IEnumerator<TrajectoryPoint> GetEnumerator() => ((IEnumerable<TrajectoryPoint>)_points).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>First and last moment, culture-invariant.</summary>
    public override string ToString() => _points.Length == 0 ? "no points" : FormattableString.Invariant($"{_points.Length} points from {_points[0]} to {_points[_points.Length - 1]}");
}
