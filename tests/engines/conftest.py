"""The workbook of questions, and every engine by name; the big programs are marked."""

import pytest
import questions

from workbookgen.engines import ENGINES, engine

PROGRAMS = ("libreoffice", "gnumeric")


@pytest.fixture(scope="session")
def workbook(tmp_path_factory):
    path = tmp_path_factory.mktemp("engines") / "questions.xlsx"
    questions.write(path)
    return path


@pytest.fixture(
    params=[
        pytest.param(name, marks=pytest.mark.programs if name in PROGRAMS else ())
        for name in ENGINES
    ]
)
def each_engine(request):
    return engine(request.param)
