using System;

namespace Refrigerant.Recovery.Processes;

/// <summary>Collects the points of a trajectory; when they become too many every second one goes.</summary>
internal sealed class TrajectoryRecorder
{
    /// <summary>Enough for any chart.</summary>
    private const int Capacity = 400;

    private TrajectoryPoint[] _points = new TrajectoryPoint[64];
    private int _count;
    private int _stride = 1;
    private int _skipped;

    /// <summary>The latest point, kept or not.</summary>
    public TrajectoryPoint Last { get; private set; }

    public void Add(in TrajectoryPoint point)
    {
        Last = point;
        if (_count > 0 && ++_skipped < _stride)
        {
            return;
        }

        _skipped = 0;
        if (_count == Capacity)
        {
            for (int i = 0; i < Capacity / 2; i++)
            {
                _points[i] = _points[2 * i];
            }

            _count = Capacity / 2;
            _stride *= 2;
        }

        if (_count == _points.Length)
        {
            Array.Resize(ref _points, Math.Min(Capacity, 2 * _count));
        }

        _points[_count++] = point;
    }

    /// <summary>The trajectory so far, its last point included; empty where no state was valid.</summary>
    public Trajectory ToTrajectory()
    {
        bool missing = _count > 0 && _points[_count - 1].Seconds < Last.Seconds;
        var points = new TrajectoryPoint[_count + (missing ? 1 : 0)];
        Array.Copy(_points, points, _count);
        if (missing)
        {
            points[_count] = Last;
        }

        return new Trajectory(points);
    }
}
