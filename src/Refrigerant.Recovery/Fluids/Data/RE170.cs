using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-E170, dimethyl ether. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class RE170
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-E170",
        Name = "dimethyl ether",
        CasNumber = "115-10-6",
        Source = "Jiangtao Wu and Yong Zhou and Eric W. Lemmon, (2011), An Equation of State for the Thermodynamic "
            + "Properties of Dimethyl Ether, J. Phys. Chem. Ref. Data, vol. 40, 023104-1:16, doi:10.1063/1.3582533",
        MolarMass = 0.04606844,
        GasConstant = 8.314472,
        ReducingTemperature = 400.378,
        ReducingMolarDensity = 5940.000000000001,
        CriticalTemperature = 400.378,
        CriticalPressure = 5336800,
        CriticalMolarDensity = 5940.000000000001,
        AcentricFactor = 0.196,
        MinimumTemperature = 131.66,
        MaximumTemperature = 525,
        MaximumPressure = 50000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.039,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.641, 0.901647942694154 },
                { 2.123, 2.432701097462898 },
                { 8.992, 4.785477723551244 },
                { 6.191, 10.36520488138709 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.029814139, 4, 1, 0 },
                { 1.43517, 1, 0.4366, 0 },
                { -2.64964, 1, 1.011, 0 },
                { -0.29515532, 2, 1.137, 0 },
                { 0.17035607, 3, 0.45, 0 },
                { -0.94642918, 1, 2.83, 2 },
                { -0.099250514, 3, 1.5, 2 },
                { 1.1264071, 2, 1.235, 1 },
                { -0.76936548, 2, 2.675, 2 },
                { -0.020717696, 7, 0.7272, 1 },
                { 0.24527037, 1, 1.816, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.1863438, 1, 1.783, 0.965336, 1.28719, 1.27772, 0.672698 },
                { -0.49398368, 1, 3.779, 1.50858, 0.806235, 0.43075, 0.924246 },
                { -0.16388716, 3, 3.282, 0.963855, 0.777942, 0.429607, 0.750815 },
                { -0.027583584, 3, 1.059, 9.72643, 197.681, 1.13849, 0.800022 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00042473, 7.162E-06 },
            { 218.03, 0.00031438, 7.4486E-06 },
            { 235.07, 0.00024484, 7.7765E-06 },
            { 252.1, 0.00019873, 8.1439E-06 },
            { 269.13, 0.00016631, 8.5498E-06 },
            { 286.17, 0.00014202, 8.9952E-06 },
            { 303.2, 0.00012264, 9.486E-06 },
            { 320.23, 0.00010619, 1.0041E-05 },
            { 337.27, 9.1409E-05, 1.0702E-05 },
            { 354.3, 7.7438E-05, 1.1558E-05 },
            { 371.33, 6.3444E-05, 1.2833E-05 },
            { 388.37, 4.7867E-05, 1.5333E-05 },
        },
    };
}
