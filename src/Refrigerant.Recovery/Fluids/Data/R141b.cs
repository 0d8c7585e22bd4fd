using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-141b, 1,1-dichloro-1-fluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R141b
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-141b",
        Name = "1,1-dichloro-1-fluoroethane",
        CasNumber = "1717-00-6",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.11694962,
        GasConstant = 8.314472,
        ReducingTemperature = 477.5,
        ReducingMolarDensity = 3921.000000000001,
        CriticalTemperature = 477.5,
        CriticalPressure = 4212000,
        CriticalMolarDensity = 3921.000000000001,
        AcentricFactor = 0.2195,
        MinimumTemperature = 169.68,
        MaximumTemperature = 500,
        MaximumPressure = 400000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 6.8978, 1.05130890052356 },
                { 7.8157, 3.290052356020942 },
                { 3.2039, 9.63979057591623 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.1469, 1, 0.25, 0 },
                { -3.6799, 1, 1.25, 0 },
                { 1.3469, 1, 1.5, 0 },
                { 0.083329, 3, 0.25, 0 },
                { 0.00025137, 7, 0.875, 0 },
                { 0.3272, 1, 2.375, 1 },
                { 0.46946, 2, 2, 1 },
                { -0.029829, 5, 2.125, 1 },
                { -0.31621, 1, 3.5, 2 },
                { -0.026219, 1, 6.5, 2 },
                { -0.078043, 4, 4.75, 2 },
                { -0.020498, 2, 12.5, 3 },
            },
        },
    };
}
