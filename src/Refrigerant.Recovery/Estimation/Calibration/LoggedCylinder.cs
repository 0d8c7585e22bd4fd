using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>The cylinder on the scale along a log, and what it holds: what was told, and what the scale has gained since it stands there.</summary>
internal sealed class LoggedCylinder
{
    private readonly LoggedJob _logged;
    private readonly ScaleCourse _scale;
    private int _at = -1;
    private double _last = double.NaN;
    private double _from = double.NaN;
    private string? _label;

    public LoggedCylinder(LoggedJob logged, ScaleCourse scale)
    {
        _logged = logged;
        _scale = scale;
    }

    /// <summary>Its number in the job's list; beyond its end for one that is not on it.</summary>
    public int Number { get; private set; }

    /// <summary>What it holds, kg; not a number where that is not known.</summary>
    public double Content { get; private set; } = double.NaN;

    /// <summary>Moves on to a reading, later than the last one.</summary>
    public void MoveTo(int reading)
    {
        IReadOnlyList<RecoveryCylinder> cylinders = _logged.Job.Cylinders;
        while (_at < reading)
        {
            _at++;
            if (_logged.Log.Readings[_at].Cylinder is string label && label != _label)
            {
                _label = label;
                int number = 0;
                while (number < cylinders.Count && cylinders[number].Label != label)
                {
                    number++;
                }

                _from = number == Number ? _from : _last;
                Number = number;
            }

            _last = double.IsNaN(_scale.Delivered[_at]) ? _last : _scale.Delivered[_at];
            _from = double.IsNaN(_from) ? _last : _from;
        }

        Content = Number < cylinders.Count ? cylinders[Number].Content.Kilograms + (_last - _from) : double.NaN;
    }
}
